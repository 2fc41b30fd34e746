"""Properties of generator/science/replicates.py beside the standard library, numpy and scipy; outside values are in test_checks.py."""

from __future__ import annotations

import math
import statistics

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy import stats

from generator.science import METHODS
from generator.science.replicates import TIMES_THE_ERROR, deviations, sample_standard_deviation, told_apart

numbers = st.floats(-1e3, 1e3).map(lambda number: round(number, 3))
replicates = st.lists(numbers, min_size=2, max_size=8)
quietly = pytest.mark.filterwarnings("ignore:Precision loss occurred")
"""What scipy says of readings that are nearly all the same."""
errors = st.floats(0, 1e3).map(lambda number: round(number, 3))


def standard_error(readings: list[float]) -> float:
    spread = sample_standard_deviation(readings)
    return float(METHODS["standard_error"].compute(sample_standard_deviation=spread, replicates=len(readings)))


@quietly
@given(replicates)
def test_spread_is_that_of_three_libraries(readings: list[float]) -> None:
    found = sample_standard_deviation(readings)
    for other in (statistics.stdev(readings), np.std(readings, ddof=1), stats.tstd(readings)):
        assert found == pytest.approx(float(other), rel=1e-9, abs=1e-9)


@quietly
@given(replicates)
def test_standard_error_is_that_of_scipy(readings: list[float]) -> None:
    assert standard_error(readings) == pytest.approx(float(stats.sem(readings)), rel=1e-9, abs=1e-9)


@quietly
@given(replicates, replicates)
def test_error_of_a_difference_is_what_the_unequal_t_test_divides_by(first: list[float], second: list[float]) -> None:
    difference = statistics.fmean(first) - statistics.fmean(second)
    found = METHODS["standard_error_of_difference"].compute(first_error=standard_error(first), second_error=standard_error(second))
    assume(found > 1e-3 and abs(difference) > 1e-3)
    assert found == pytest.approx(difference / float(stats.ttest_ind(first, second, equal_var=False).statistic), rel=1e-6)


@given(replicates)
def test_deviations_cancel(readings: list[float]) -> None:
    assert 0.0 == pytest.approx(math.fsum(deviations(readings)), abs=1e-9)


@given(replicates, numbers)
def test_a_meter_that_is_wrong_by_the_same_amount_every_time_does_not_show(readings: list[float], bias: float) -> None:
    assert sample_standard_deviation([reading + bias for reading in readings]) == pytest.approx(sample_standard_deviation(readings), abs=1e-9)


@given(replicates)
def test_four_times_the_replicates_halve_the_error_but_for_the_one_less(readings: list[float]) -> None:
    """The same readings four times over: n - 1 in the spread, n in the error."""
    n = len(readings)
    expected = standard_error(readings) / 2 * math.sqrt(4 * (n - 1) / (4 * n - 1))
    assert standard_error(readings * 4) == pytest.approx(expected, rel=1e-9, abs=1e-9)


@given(errors, errors, st.floats(0.01, 1e3))
def test_error_of_a_rate_is_that_of_the_difference_over_the_time(first: float, second: float, duration: float) -> None:
    difference = METHODS["standard_error_of_difference"].compute(first_error=first, second_error=second)
    rate = METHODS["standard_error_of_rate"].compute(first_error=first, second_error=second, duration=duration)
    assert max(first, second) <= difference * (1 + 1e-12) and difference <= (first + second) * (1 + 1e-12)
    assert difference == pytest.approx(rate * duration)


@given(numbers, st.floats(0.001, 1e3))
def test_a_verdict_does_not_hang_on_sign_or_unit(difference: float, error: float) -> None:
    verdict = told_apart(difference, error)
    assert verdict == told_apart(-difference, error) == told_apart(1024 * difference, 1024 * error)
    assert verdict == (abs(difference) / error > TIMES_THE_ERROR)


@pytest.mark.parametrize("readings", [[], [1.0, math.nan], [math.inf]])
def test_spread_of_nothing_is_refused(readings: list[float]) -> None:
    with pytest.raises(ValueError, match="readings: expected one finite number or more"):
        sample_standard_deviation(readings)


@pytest.mark.parametrize(("difference", "error"), [(math.nan, 1.0), (1.0, -0.1), (1.0, math.inf)])
def test_verdict_on_impossible_numbers_is_refused(difference: float, error: float) -> None:
    with pytest.raises(ValueError, match="expected a finite difference"):
        told_apart(difference, error)


@given(st.lists(numbers, min_size=1, max_size=8))
def test_mean_is_that_of_the_standard_library_and_moves_with_the_readings(readings: list[float]) -> None:
    mean = METHODS["replicate_mean"].compute
    assert statistics.fmean(readings) == pytest.approx(mean(readings=readings), abs=1e-9)
    assert mean(readings=readings) + 5 == pytest.approx(mean(readings=[reading + 5 for reading in readings]), abs=1e-9)


def test_one_reading_is_its_own_mean_and_has_no_spread() -> None:
    assert 3.2 == METHODS["replicate_mean"].compute(readings=[3.2])
    assert sample_standard_deviation([3.2]) is None


@pytest.mark.parametrize(("first", "second", "expected"), [(0.0, 0.0, 0.0), (0.3, 0.0, 0.3), (0.0, 0.4, 0.4), (0.3, 0.4, 0.5)])
def test_exact_means_add_no_error(first: float, second: float, expected: float) -> None:
    assert expected == pytest.approx(METHODS["standard_error_of_difference"].compute(first_error=first, second_error=second))


@pytest.mark.parametrize(("difference", "verdict"), [(1.99, False), (2.0, False), (2.01, True), (-2.01, True)])
def test_twice_the_error_is_the_limit(difference: float, verdict: bool) -> None:
    """Source: a mean and twice its standard error span about 95 %, as it is taught; twice itself is not more than twice."""
    assert verdict is told_apart(difference, 1.0)
