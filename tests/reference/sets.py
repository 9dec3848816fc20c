"""Reads a table of sets as the app writes it, and says what pandas makes of it.

Run by hand, with Python 3.11 and pandas (pip install pandas in a virtual environment):

    cargo test --no-default-features --test core table:: -- --ignored
    python tests/reference/sets.py target/sets.csv

Every row must have every column, the figures must be numbers and the times must be times. The last line says so.
"""

import sys
from decimal import Decimal

import pandas as pd

KG_PER_LB = Decimal("0.45359237")
NUMBERS = ["block", "set", "drop", "load kg", "reps", "other side reps", "partial reps", "seconds", "metres", "rest taken s", "proposed kg",
           "body mass kg", "session rpe"]


def main(path: str) -> None:
    typed = pd.read_csv(path)
    as_text = pd.read_csv(path, dtype=str, keep_default_na=False)
    assert len(typed) == len(as_text) and list(typed.columns) == list(as_text.columns)
    for column in NUMBERS:
        assert pd.api.types.is_numeric_dtype(typed[column]), column
    times = [pd.Timestamp(text) for text in as_text["date"]]
    assert all(time.tzinfo is not None for time in times)
    assert times == sorted(times)
    for _, row in as_text.iterrows():
        if row["load"]:
            load = Decimal(row["load"])
            kg = load * KG_PER_LB if row["load unit"] == "lb" else load
            assert kg == Decimal(row["load kg"]), row
        for text in row:
            assert not text.startswith(("=", "+", "-", "@", "\t", "\r")), text
    print(f"pandas {pd.__version__}: {len(typed)} rows, {len(typed.columns)} columns, all as they should be")


if __name__ == "__main__":
    main(sys.argv[1])
