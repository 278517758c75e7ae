"""Write the table of facts: ``python -m markbench.rubric.facts_table > rubrics/FACTS.md``."""

from __future__ import annotations

import sys

from markbench.rubric.facts import facts_table_markdown

if __name__ == "__main__":
    sys.stdout.write(facts_table_markdown())
