"""Questions on investigations: right answers from facts, each usual mistake recognised, no prompt that tells another answer."""

from __future__ import annotations

import re

import pytest

from generator.kinds.productivity.bottle_questions import BottleQuestions
from generator.questions.question import ChartReading, Choice, NumberEntry, Ordering
from tests.kinds.productivity.small_series import DEEP, GRAZED, GREW, TOP, bottles, harvest, of
from tests.kinds.small_records import demo, library, made, rejected

BOTTLES, HARVEST = "productivity/halden_water_bottles", "productivity/harrow_plain_harvest"


def entry(text: str, name: str) -> NumberEntry:
    found = made(of(text))[name]
    assert isinstance(found, NumberEntry)
    return found


def chosen(text: str, name: str) -> Choice:
    found = made(of(text))[name]
    assert isinstance(found, Choice)
    return found


def slips(question: NumberEntry) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    for slip in question.slips:
        found.setdefault(slip.misconception, []).append(slip.shown)
    return found


def test_net_production_recognises_a_missing_time_a_wrong_sign_and_wrong_bottles() -> None:
    """Source: arithmetic, 1.1 / 4; 1.1; -1.1 / 4; 1.7 / 4 and 0.6 / 4."""
    question = entry(bottles(), "net_production")
    unit = "mg O₂ L⁻¹ h⁻¹"
    assert f"0.275 {unit}" == question.answer
    assert {
        "inv.no-time": [f"1.10 {unit}"], "inv.start-less-end": [f"−0.275 {unit}"], "ps.bottles": [f"0.425 {unit}", f"0.150 {unit}"],
    } == slips(question)  # fmt: skip


def test_gross_production_offers_net_production_and_respiration() -> None:
    question = chosen(bottles(), "gross_production")
    by_misconception = {option.misconception: option.text for option in question.options}
    assert "0.425 mg O₂ L⁻¹ h⁻¹" == by_misconception[""]
    assert {"bio.gross-net", "ps.bottles", "inv.no-time", "ps.sign"} == set(by_misconception) - {""}


def test_a_day_counts_light_for_production_and_all_hours_for_respiration() -> None:
    """Source: arithmetic, 0.1 × 10 - 0.15 × 24 at the depth that the other questions leave alone."""
    question = entry(bottles(TOP, DEEP), "day_and_night")
    assert "−2.60 mg O₂ L⁻¹ d⁻¹" == question.answer
    assert {"ps.hours": ["−1.20 mg O₂ L⁻¹ d⁻¹"], "ps.respire-in-light": ["−0.500 mg O₂ L⁻¹ d⁻¹"]}.items() <= slips(question).items()
    assert "numbers on this page" in entry(bottles(), "day_and_night").prompt


def test_rounded_rates_from_the_prompt_give_a_day_that_is_accepted() -> None:
    """Whoever puts in what the prompt says must be right."""
    question = made(demo(BOTTLES))["day_and_night"]
    assert isinstance(question, NumberEntry)
    assert question.accepted.low <= 0.0550 * 15 - 0.0167 * 24 <= question.accepted.high


def test_carbon_recognises_oxygen_taken_for_it_and_the_quotient_left_out() -> None:
    question = entry(bottles(), "carbon")
    assert "1.33 mg C L⁻¹ d⁻¹" == question.answer
    assert {"ps.oxygen-is-carbon", "ps.quotient-left-out", "ps.quotient-times", "ps.molar-inverse"} == set(slips(question))


def test_standard_error_of_four_is_half_the_spread() -> None:
    question = entry(bottles({"light": "[9, 9, 9.4, 9.4]"}), "standard_error")
    assert "0.115 mg O₂ L⁻¹" == question.answer
    assert {"inv.error-divide-n", "inv.error-grows", "inv.spread-is-error"} == set(slips(question))


def test_without_replicates_nobody_is_asked_for_their_error() -> None:
    found = made(of(bottles({"initial": "[8.1]", "light": "[9.2]", "dark": "[7.5]"})))
    assert not {"standard_error", "told_apart"} & set(found)
    assert {} == rejected(of(bottles({"initial": "[8.1]", "light": "[9.2]", "dark": "[7.5]"})))


@pytest.mark.parametrize("record", [BOTTLES, HARVEST])
def test_one_of_three_differences_is_more_than_twice_its_standard_error(record: str) -> None:
    """It is neither the largest nor the one with the smallest error; the numbers are read as they are shown."""
    question = made(demo(record))["told_apart"]
    assert isinstance(question, Choice) and question.supposed
    texts = [option.text for option in question.options if "with a standard error" in option.text]
    pairs = {text: tuple(float(number) for number in re.findall(r"(?:^|error of )([\d.]+)", text)) for text in texts}
    (right,) = [option.text for option in question.options if option.right]
    assert [right] == [text for text, (difference, error) in pairs.items() if difference > 2 * error]
    assert right not in (max(pairs, key=lambda text: pairs[text][0]), min(pairs, key=lambda text: pairs[text][1]))


@pytest.mark.parametrize(("light", "begins"), [("[6.05, 6.15]", "At 4 m the oxygen in the light bottles hardly"), ("[5.7, 5.6]", "Suppose that at one depth")])
def test_light_bottles_without_a_change_are_asked_about_where_the_data_show_some_that_made_oxygen(light: str, begins: str) -> None:
    """Source: arithmetic: 6.1 at the start and after, beside 5.5 in the dark; then 5.65, where 0.15 made is less than twice its error of 0.11."""
    assert chosen(bottles(TOP, DEEP | {"light": light}), "hardly_changed").prompt.startswith(begins)


def test_warm_dark_bottles_make_both_of_their_differences_too_large() -> None:
    """More is lost in them, so start less dark grows, and light less dark as well."""
    (option,) = [option for option in chosen(bottles(), "warm_dark").options if option.right]
    assert "Respiration would come out too large, and gross production as well" == option.text


def test_best_depth_is_read_off_the_profile() -> None:
    found = made(of(bottles(TOP, TOP | {"depth": "2", "light": "[9.4, 9.8]"}, DEEP | {"depth": "9"})))["best_depth"]
    assert isinstance(found, ChartReading)
    assert (("0 m", "2 m", "9 m"), ("2 m",)) == (found.labels, found.right)
    assert "best_depth" not in made(of(bottles(TOP, DEEP)))


def test_largest_number_of_the_profile_gives_way_to_the_depth_that_takes_two_charts() -> None:
    assert "best_depth" not in made(demo(BOTTLES)) and "gain_by_day" in made(demo(BOTTLES))


def test_where_most_is_respired_is_a_slip_only_where_the_chart_shows_it() -> None:
    """Source: the record: just below the surface and at 2 m the bottles used as much."""
    demo_ = BottleQuestions(demo(BOTTLES), demo(BOTTLES).record.bottles, library().catalogue)
    assert ["10 m"] == [label for slip in demo_.best_depth().slips for label in slip.labels]
    used = made(of(bottles(TOP, TOP | {"depth": "2", "light": "[9.4, 9.8]"}, DEEP | {"depth": "9", "light": "[4.5, 4.7]", "dark": "[3.3, 3.5]"})))["best_depth"]
    assert {"9 m": "bio.respired-net"}.items() <= {label: slip.misconception for slip in used.slips for label in slip.labels}.items()


def test_biomass_knows_the_slips_with_a_quadrat() -> None:
    """Source: arithmetic, 11 / 0.25; 11, 11 × 0.25 and 11 / 0.5."""
    question = entry(harvest(("", GREW)), "biomass")
    assert "44.0 g m⁻²" == question.answer
    assert {"bio.quadrat": ["11.0 g m⁻²"], "bio.quadrat-times": ["2.75 g m⁻²"], "bio.quadrat-side": ["22.0 g m⁻²"]} == slips(question)


def test_net_production_by_harvest_is_not_the_biomass() -> None:
    question = entry(harvest(("", GREW)), "net_production")
    assert ("1.68 g m⁻² d⁻¹", ["2.56 g m⁻² d⁻¹"]) == (question.answer, slips(question)["bio.stock-rate"])


def test_share_of_gross_production_is_asked_where_respiration_is_known() -> None:
    """Source: arithmetic: 1.2 of 1.68 + 1.2; 1.2 / 1.68, 1.68 / 2.88 and 1.2 / 0.48."""
    known = ("respiration: 1.2", GREW)
    assert "respired_share" in made(of(harvest(("", GRAZED), known)))
    assert "respired_share" not in made(of(harvest(("", GREW))))
    question = entry(harvest(known), "respired_share")
    assert ("41.7 %", ["71.4 %", "58.3 %", "250 %", "0.417 %"]) == (question.answer, [slip.shown for slip in question.slips])


def test_energy_of_a_hectare_takes_area_and_time() -> None:
    """Source: arithmetic: 84 g m-2 at 17.5 kJ a gram are 1470 kJ m-2, 14 700 MJ on a hectare; 294 in a day, 1.47 on a square metre, 147 by 100."""
    question = entry(harvest(("", GREW)), "energy")
    assert "14\u202f700 MJ ha⁻¹" == question.answer
    assert {"inv.no-time": ["294 MJ ha⁻¹"], "nit.area": ["1.47 MJ ha⁻¹", "147 MJ ha⁻¹"]}.items() <= slips(question).items()


def test_what_was_eaten_is_asked_of_a_pair_of_plots() -> None:
    """Source: arithmetic: 84 less 40 g m-2 in 50 days are 8.8 kg on a hectare in a day; 8.0, 16.8, 24.8, and 440 in all the days."""
    question = entry(harvest(("grazing: kept_out", GREW), ("grazing: open", GRAZED)), "eaten")
    of_day = "kg ha⁻¹ d⁻¹"
    assert f"8.80 {of_day}" == question.answer
    assert {"bio.eaten-is-left": [f"8.00 {of_day}"], "bio.eaten-is-all": [f"16.8 {of_day}"], "bio.eaten-added": [f"24.8 {of_day}"], "inv.no-time": [f"440 {of_day}"]}.items() <= slips(question).items()
    assert "eaten" not in made(of(harvest(("", GREW), ("", GRAZED))))


@pytest.mark.parametrize(
    "text",
    [
        bottles(TOP, DEEP | {"dark": "[5.3, 5.5]"}), bottles(), harvest(("", GREW)), harvest(("respiration: 1.2", GREW)),
        harvest(("grazing: kept_out, respiration: 1.2", GREW), ("grazing: open", ((0.0, "[9, 12]"), (50.0, "[19, 22]")))),
    ],
)  # fmt: skip
def test_no_prompt_tells_the_answer_to_another_question(text: str) -> None:
    found = made(of(text))
    answers = {name: question.answer for name, question in found.items() if isinstance(question, NumberEntry)}
    answers |= {name: o.text for name, q in found.items() if isinstance(q, Choice) and q.fact is not None for o in q.options if o.right}
    told = [(name, other) for name, answer in answers.items() for other, question in found.items() if other != name and answer in question.prompt]
    assert [] == told


@pytest.mark.parametrize("record", [BOTTLES, HARVEST])
def test_demo_asks_on_all_that_the_method_teaches(record: str) -> None:
    asked = set(made(demo(record)))
    assert {"net_production", "why_replicates", "standard_error", "told_apart"} <= asked
    assert ({"gross_production", "respiration", "lost_start", "warm_dark", "hardly_changed", "gain_by_day"} if record == BOTTLES else {"respired_share", "stock_or_rate", "why_dry", "eaten"}) <= asked


def test_without_the_start_only_light_less_dark_is_left() -> None:
    question = made(demo(BOTTLES))["lost_start"]
    assert isinstance(question, Choice)
    assert ["Gross production alone"] == [option.text for option in question.options if option.right]


def test_day_and_night_has_rates_of_its_own_on_the_page() -> None:
    """The table of the page tells what a day leaves; the sum of the prompt comes out as the key says."""
    (question,) = [one for one in library().questions[BOTTLES] if one.id == "day_and_night"]
    assert isinstance(question, NumberEntry) and question.supposed
    gross, respired = (float(found) for found in re.findall(r"([\d.]+) mg", question.prompt))
    assert f"{gross * 15 - respired * 24:.3g}" == question.answer.split(" ")[0]


def test_gain_by_day_may_be_a_loss_by_day_and_night() -> None:
    """Source: arithmetic: 1.1 gained in four hours at 0 m; at 4 m 0.1 is gained, but 0.15 x 24 used against 0.175 x 10 made."""
    dim = DEEP | {"light": "[6.1, 6.3]"}
    question = made(of(bottles(TOP, dim, DEEP | {"depth": "9"})))["gain_by_day"]
    assert isinstance(question, ChartReading)
    assert (("4 m",), [("0 m",)]) == (question.right, [slip.labels for slip in question.slips])


def test_gain_that_is_kept_everywhere_or_nowhere_is_not_asked_about() -> None:
    assert "gain_by_day" not in made(of(bottles(DEEP, DEEP | {"depth": "6"}, DEEP | {"depth": "9"})))
    assert "gain_by_day" not in made(of(bottles(TOP, TOP | {"depth": "6"})))


def test_steps_from_quadrat_to_rate_begin_with_the_cut_and_end_with_the_days() -> None:
    question = made(demo(HARVEST))["from_quadrat_to_rate"]
    assert isinstance(question, Ordering)
    assert ("Cut", "Divide by the number of days") == (question.steps[0].text, question.steps[-1].text)
    assert all(step.leads_on for step in question.steps[:-1])


def test_standard_error_is_asked_for_without_telling_how() -> None:
    question = made(demo(BOTTLES))["standard_error"]
    assert isinstance(question, NumberEntry)
    assert not {"root", "divide"} & {*question.prompt.lower().replace("?", "").split(), *question.hints[0].lower().split()}
