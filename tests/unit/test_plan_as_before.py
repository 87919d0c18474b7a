"""`nursery plan --json` called as in 0.1.0 gives its keys, numbers and days.

`plans_0_1_0.jsonl` was written by that release: it says that callers need change nothing, and
nothing of whether the numbers are right; tests/reference is for that. Other on purpose are the
new key `mix_told_l`, no alarm at the seed rate of single seedlings, and what is not in the
file: the days before a longer soaking (--water-c, --slow-seed) and the hours of --hands.
"""

import json
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from freezegun import freeze_time

from assistant.commands.plan import command

PLANS = [
    json.loads(line)
    for line in (Path(__file__).parent / "plans_0_1_0.jsonl").read_text().splitlines()
]


@pytest.mark.parametrize("plan", PLANS, ids=lambda plan: " ".join(plan["args"]))
def test_a_plan_is_as_release_0_1_0_made_it(plan: dict[str, Any]) -> None:
    with freeze_time("2026-06-01"):
        result = CliRunner().invoke(command, [*plan["args"], "--json"])
    data = json.loads(result.stdout)
    days = data.pop("calendar")
    codes = {each["code"] for each in data.pop("warnings")}
    assert data.pop("mix_told_l") > 0
    assert data == plan["numbers"]
    assert [[day["task"], day["date"], day.get("until")] for day in days] == plan["days"]
    assert set(plan["codes"]) - codes <= {"seed_rate_unusual"}
