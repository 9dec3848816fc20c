"""Sums the table of sets of a long ledger week by week, and holds it against the weeks as the app sums them.

Run by hand, with Python 3.11 and pandas (pip install pandas in a virtual environment):

    cargo xtask ledger --years 10
    python tests/reference/weeks.py target/ledger-10-sets.csv target/ledger-10-weeks.csv

Sessions, sets but ramp-ups, hard ones among them and volume load must be the same in every week. The last line says so.
"""

import sys
from decimal import Decimal

import pandas as pd

# What part of the body the invented lifter's push-ups move: the table does not say it.
SHARE = Decimal("0.64")
# Told to leave so many reps or fewer, a set is hard.
HARD = 4


def moved(row: pd.Series) -> Decimal:
    """Kilograms that one repetition moves; 0 where that is not known or nothing is."""
    load = Decimal(row["load kg"] or "0")
    body = Decimal(row["body mass kg"] or "0")
    match row["load is"]:
        case "moved":
            return load
        case "added to body mass":
            return body + load
        case "assisting body mass":
            return max(body - load, Decimal(0))
        case "added to a share of body mass":
            return body * SHARE + load
        case _:
            return Decimal(0)


def reps(row: pd.Series) -> int:
    """Repetitions of both sides."""
    one = int(row["reps"] or "0")
    if row["other side reps"]:
        return one + int(row["other side reps"])
    return one if row["sides"] == "both" else 2 * one


def main(sets: str, weeks: str) -> None:
    table = pd.read_csv(sets, dtype=str, keep_default_na=False)
    # A session is of the day on which it began, by the clock of its place: its first set's here.
    days = pd.to_datetime(table["date"].str.slice(0, 10))
    table["day"] = days.groupby(table["session id"]).transform("min")
    table["monday"] = table["day"] - pd.to_timedelta(table["day"].dt.day_of_week, unit="D")
    work = table[table["kind"] != "ramp-up"].copy()
    told = work["reps in reserve"] != ""
    near = pd.to_numeric(work["reps in reserve"]) <= HARD
    work["hard"] = (told & near) | (~told & (work["kind"] == "to failure"))
    work["volume"] = [moved(row) * reps(row) for _, row in work.iterrows()]
    mine = work.groupby("monday").agg(sets=("hard", "size"), hard=("hard", "sum"), volume=("volume", "sum"))
    mine["sessions"] = table.groupby("monday")["session id"].nunique()
    theirs = pd.read_csv(weeks, dtype=str)
    trained = theirs[theirs["sessions"] != "0"]
    assert len(trained) == len(mine), (len(trained), len(mine))
    for _, week in trained.iterrows():
        own = mine.loc[pd.Timestamp(week["monday"])]
        for column in ["sessions", "sets", "hard"]:
            assert int(week[column]) == own[column], (week["monday"], column, week[column], own[column])
        assert Decimal(week["volume kg"]) == own["volume"], (week["monday"], week["volume kg"], own["volume"])
    print(f"pandas {pd.__version__}: {len(table)} sets, {len(mine)} weeks, each sum the same")


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2])
