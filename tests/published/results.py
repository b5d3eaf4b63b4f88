"""Write RESULTS.md anew: the tables of the published designs, failures and measurements.

    python -m tests.published.results

The sections come from the tests that judge them; each test compares its own with the file.
"""

from pathlib import Path

from . import test_designs, test_failures, test_predictions

HEAD = """# Published designs and failures: what the program says of them

Printed from the data of these tests by `python -m tests.published.results`; a test compares
every section. What it taught, and how a case is added, stands in `README.md` beside this file.
"""


def main() -> None:
    """Put the sections together and write them beside this file."""
    sections = (
        test_failures.section(),
        test_designs.section(),
        test_designs.holding_section(),
        test_predictions.section(),
    )
    text = "\n".join((HEAD, *(f"{section}\n" for section in sections)))
    Path(__file__).with_name("RESULTS.md").write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()
