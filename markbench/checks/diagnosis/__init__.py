"""Why are the readings wrong? Explanations weighed against honest work, for whole classes."""

from markbench.checks.diagnosis.findings import slip_finding
from markbench.checks.diagnosis.slips import SLIPS, SlipWords
from markbench.checks.diagnosis.weigh import weigh

__all__ = ["SLIPS", "SlipWords", "slip_finding", "weigh"]
