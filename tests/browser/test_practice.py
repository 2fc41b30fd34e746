"""Practice over the whole course: mixed, due after growing gaps, kept on this device alone, taken along, and forgotten."""

from __future__ import annotations

import datetime
import json
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.watch import Watch, violations
from tests.kinds.small_records import library

pytestmark = pytest.mark.browser
DESK, RECORD = "practice.html", "my-record.html"
MINUTES = {"choice": 1.25, "several": 1.5, "number": 2.5, "order": 2, "match": 2, "label": 1}
NO_STORAGE = "for (const name of ['getItem', 'setItem', 'removeItem']) Storage.prototype[name] = () => { throw new Error('refused') }"


def desk(opened: Callable[..., Page], site: Path, address: str = DESK, **settings: object) -> Page:
    page = opened(f"{site.as_uri()}/{address}", **settings)
    page.get_by_role("status").first.wait_for(state="attached")
    return page


def begin(page: Page, button: str = "Mixed set of 10") -> None:
    page.get_by_role("button", name=button).click()
    expect(page.locator(".desk-head")).to_be_visible()


def names(page: Page) -> list[str]:
    return page.evaluate("studyProgress.remembered('route').names")


def types(page: Page) -> dict[str, str]:
    script = (Path(page.url.removeprefix("file://")).parent / "assets/practice/index.js").read_text("utf-8")
    items = json.loads(script.removeprefix("studyPractice(").rstrip().removesuffix(")"))["items"]
    return {f"{record}/{item}": kind for record, item, kind, *_ in items}


def test_a_mixed_set_has_no_neighbours_of_one_record_or_one_type(built_site: Path, opened: Callable[..., Page]) -> None:
    page = desk(opened, built_site)
    begin(page)
    order, of = names(page), types(page)
    assert 10 == len(order)
    pairs = list(zip(order, order[1:], strict=False))
    assert [] == [pair for pair in pairs if pair[0].rpartition("/")[0] == pair[1].rpartition("/")[0]]
    assert len({of[name] for name in order}) >= 3


@pytest.mark.parametrize("minutes", [10, 20, 40])
def test_the_evening_before_fills_its_minutes_and_no_more(built_site: Path, opened: Callable[..., Page], minutes: int) -> None:
    page = desk(opened, built_site)
    begin(page, f"{minutes} minutes")
    of = types(page)
    assert minutes - 1.5 <= sum(MINUTES[of[name]] for name in names(page)) <= minutes


def test_own_mistakes_come_first(built_site: Path, opened: Callable[..., Page]) -> None:
    page = desk(opened, built_site)
    wrong = ["cycle/global_carbon/turnover_time", "pyramid/sill_lake/transfer_efficiency"]
    known = [name for name in wrong if name in types(page)]
    assert known
    page.evaluate("names => names.forEach(name => studyProgress.note(name, false))", known)
    begin(page)
    assert set(known) <= set(names(page))


def test_a_set_that_was_stopped_goes_on_after_a_reload(built_site: Path, opened: Callable[..., Page]) -> None:
    page = desk(opened, built_site)
    begin(page)
    page.get_by_role("button", name="Next question").click()
    expect(page.locator(".desk-head")).to_have_text("Question 2 of 10")
    second = page.locator("self-check").get_attribute("data-question")
    page.get_by_role("button", name="Stop here").click()
    page.reload()
    page.get_by_role("button", name="Go on where you stopped (2 of 10)").click()
    assert second == page.locator("self-check").get_attribute("data-question")


def test_gaps_grow_with_right_answers_and_close_with_a_wrong_one(built_site: Path, opened: Callable[..., Page]) -> None:
    page = desk(opened, built_site)
    name, gaps = "biome/savanna/annual_precip", []
    for right in (True, True, True, True, True, True, True, False):
        page.evaluate("([name, right]) => studyProgress.note(name, right)", [name, right])
        gaps.append(page.evaluate("name => studyProgress.item(name)[1] - studyProgress.today()", name))
    assert [1, 2, 4, 8, 16, 32, 32, 1] == gaps


def test_a_lucky_guess_does_not_move_on(built_site: Path, opened: Callable[..., Page]) -> None:
    page = desk(opened, built_site)
    page.evaluate("studyProgress.note('a/b/c', true, 'guess')")
    assert 0 == page.evaluate("studyProgress.item('a/b/c')[0]")


def test_right_answers_come_back_on_their_day_and_not_before(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened("about:blank")
    start = datetime.datetime(2027, 3, 1, 12)
    page.clock.set_fixed_time(start)
    page.goto(f"{built_site.as_uri()}/{DESK}")
    page.evaluate("studyProgress.note('biome/savanna/dry_months', true)")
    for days, due in ((0, "0 questions due"), (1, "1 question due")):
        page.clock.set_fixed_time(start + datetime.timedelta(days=days))
        page.reload()
        expect(page.locator(".desk-state")).to_contain_text(due)


def test_an_answer_on_a_record_s_page_counts_for_practice(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/biome/savanna.html")
    check = page.locator(".check", has=page.locator("[data-type='choice']")).first
    check.get_by_role("radio").first.check()
    check.get_by_role("button", name="Check").click()
    page.goto(f"{built_site.as_uri()}/{DESK}")
    expect(page.locator(".desk-state")).to_contain_text("1 of ")


def test_what_is_kept_goes_to_a_file_and_comes_back(built_site: Path, opened: Callable[..., Page], tmp_path: Path) -> None:
    page = desk(opened, built_site, RECORD)
    page.evaluate("studyProgress.note('biome/savanna/dry_months', true)")
    kept = page.evaluate("studyProgress.exported()")
    with page.expect_download() as download:
        page.get_by_role("button", name="Save to a file").click()
    saved = tmp_path / "practice.json"
    download.value.save_as(saved)
    assert kept == saved.read_text("utf-8")
    page.on("dialog", lambda dialog: dialog.accept())
    page.get_by_role("button", name="Forget everything here").click()
    assert None is page.evaluate("studyProgress.item('biome/savanna/dry_months')")
    assert [] == page.evaluate("Object.keys(localStorage).filter(name => name.startsWith('study'))")
    page.get_by_label("Bring back from a file").set_input_files(saved)
    expect(page.get_by_text("1 question brought back.")).to_be_visible()
    assert kept == page.evaluate("studyProgress.exported()")


@pytest.mark.parametrize("text", ["", "no", "[]", '{"version": 2}', "null"])
def test_a_foreign_file_changes_nothing(built_site: Path, opened: Callable[..., Page], tmp_path: Path, text: str) -> None:
    page = desk(opened, built_site, RECORD)
    page.evaluate("studyProgress.note('biome/savanna/dry_months', true)")
    before = page.evaluate("studyProgress.exported()")
    (tmp_path / "other.json").write_text(text, "utf-8")
    page.get_by_label("Bring back from a file").set_input_files(tmp_path / "other.json")
    expect(page.get_by_text("That file was not saved by this page.")).to_be_visible()
    assert before == page.evaluate("studyProgress.exported()")


LEVELS = """(records) => records.map(one => studyProgress.level(one.questions))"""
RECORDS = [{"record": f"kind/r{n}", "questions": [f"kind/r{n}/q{q}" for q in range(8)]} for n in range(33)]


def test_a_short_code_carries_how_far_each_page_is_to_another_device(built_site: Path, opened: Callable[..., Page]) -> None:
    here, there = (desk(opened, built_site) for _ in range(2))
    for n, known in enumerate([0, 1, 4, 8, 5, 8, 2, 0, 8] * 3):
        for question in RECORDS[n]["questions"][:known]:
            here.evaluate("name => { studyProgress.note(name, true); studyProgress.note(name, true) }", question)
    code = here.evaluate("records => studyProgress.code(records)", RECORDS)
    assert len(code.replace("-", "")) <= 16
    assert "applied" == there.evaluate("([code, records]) => studyProgress.applied(code, records)", [code.lower().replace("-", " "), RECORDS])
    assert here.evaluate(LEVELS, RECORDS) == there.evaluate(LEVELS, RECORDS)


def test_a_code_with_one_wrong_letter_or_from_another_edition_is_refused(built_site: Path, opened: Callable[..., Page]) -> None:
    page = desk(opened, built_site)
    for question in RECORDS[0]["questions"]:
        page.evaluate("name => { studyProgress.note(name, true); studyProgress.note(name, true) }", question)
    code = page.evaluate("records => studyProgress.code(records)", RECORDS)
    wrong = code[:-1] + ("4" if code[-1] != "4" else "5")
    assert "mistyped" == page.evaluate("([code, records]) => studyProgress.applied(code, records)", [wrong, RECORDS])
    assert "other edition" == page.evaluate("([code, records]) => studyProgress.applied(code, records)", [code, RECORDS[:30]])


def test_mistakes_that_came_up_are_listed_with_what_holds(built_site: Path, opened: Callable[..., Page]) -> None:
    page = desk(opened, built_site, RECORD)
    page.evaluate("studyProgress.note('biome/savanna/dry_months', false, '', 'clim.least-is-dry')")
    expect(page.locator("practice-record li")).to_contain_text("(1 time)")


def test_without_storage_everything_works_until_the_page_is_left(built_site: Path, watched: Callable[..., Watch]) -> None:
    watch = watched(built_site.as_uri())
    watch.page.add_init_script(NO_STORAGE)
    page = watch.open(DESK)
    expect(page.locator(".desk-state")).to_contain_text("This browser keeps nothing")
    begin(page)
    page.get_by_role("button", name="Next question").click()
    expect(page.locator(".desk-head")).to_have_text("Question 2 of 10")


def test_without_scripts_the_way_to_the_questions_is_there(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{DESK}", java_script_enabled=False)
    page.get_by_role("link", name="Tropical savanna").last.click()
    assert "biome/savanna.html#q-" in page.url


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_running_set_breaks_no_rule_of_accessibility(built_site: Path, opened: Callable[..., Page], scheme: str) -> None:
    page = desk(opened, built_site, color_scheme=scheme, bypass_csp=True, viewport={"width": 390, "height": 800})
    begin(page)
    assert [] == violations(page)
    assert page.evaluate("document.documentElement.scrollWidth") <= 390


def test_the_front_page_tells_what_is_due(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened("about:blank")
    page.clock.set_fixed_time(datetime.datetime(2027, 3, 1, 12))
    page.goto(f"{built_site.as_uri()}/index.html")
    page.evaluate("studyProgress.note('biome/savanna/dry_months', false)")
    page.clock.set_fixed_time(datetime.datetime(2027, 3, 2, 12))
    page.reload()
    expect(page.locator("practice-due")).to_contain_text("1 question due on this device.")


@pytest.mark.parametrize(("wait", "first"), [(10, 2), (28, 6), (365, 18)])
def test_the_first_review_comes_after_a_fifth_of_weeks_and_a_twentieth_of_a_year(
    built_site: Path, opened: Callable[..., Page], wait: int, first: int
) -> None:
    """Source: Cepeda, Vul, Rohrer, Wixted and Pashler 2008, Spacing effects in learning; give or take a day."""
    assert abs(desk(opened, built_site).evaluate("wait => studyProgress.plan(wait)[0]", wait) - first) <= 1


def test_gaps_of_a_plan_never_shrink_and_it_ends_on_the_eve(built_site: Path, opened: Callable[..., Page]) -> None:
    plans = desk(opened, built_site).evaluate("[...Array(400).keys()].map(wait => studyProgress.plan(wait))")
    assert ([], [0], [1]) == tuple(plans[:3])
    for wait, days in enumerate(plans[1:], start=1):
        gaps = [late - early for early, late in zip([0, *days], days, strict=False)]
        assert gaps == sorted(gaps) and wait - 1 == days[-1], wait


def test_before_a_test_everything_answered_comes_once_more_on_its_eve(built_site: Path, opened: Callable[..., Page]) -> None:
    page = desk(opened, built_site)
    name = next(iter(types(page)))
    page.evaluate("name => [1, 2, 3, 4, 5].forEach(() => studyProgress.note(name, true, 'sure'))", name)
    due = "([name, day, test]) => studyProgress.due([name], studyProgress.today() + day, test === null ? null : studyProgress.today() + test).length"
    found = [page.evaluate(due, [name, day, test]) for day, test in ((4, None), (4, 5), (3, 5), (0, 1), (6, 5), (16, None))]
    assert [0, 1, 0, 0, 0, 1] == found


def test_the_desk_says_when_to_practise_for_the_test(built_site: Path, opened: Callable[..., Page]) -> None:
    page = desk(opened, built_site)
    day = next(test.on for test in library().course.tests if test.on)
    page.clock.set_fixed_time(datetime.datetime.combine(day - datetime.timedelta(days=10), datetime.time(12)))
    page.reload()
    expect(page.locator(".desk-state")).to_contain_text("is in 10 days: practise on")
    page.get_by_label("Practise").select_option("everything")
    expect(page.locator(".desk-state")).not_to_contain_text("practise on")
