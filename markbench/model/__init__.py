"""Plain, frozen data that every other part of Markbench speaks in. Knows nothing else."""

from markbench.model.brief import Brief, Late, Place, Tolerances, Words
from markbench.model.finding import Concern, Finding, Who
from markbench.model.marking import Decision, Draft, Mark, Reason, State
from markbench.model.portfolio import (
    ClassWork,
    Doubt,
    Learner,
    Match,
    Piece,
    PieceKind,
    PieceState,
    Portfolio,
    piece_states,
)
from markbench.model.readings import OwnQuantity, OwnValue, Reading, ReadingsTable, Timing
from markbench.model.results import (
    Analysis,
    Diagnosis,
    Estimate,
    Explanation,
    Gravity,
    Indistinct,
    LocalGravity,
    Row,
    StraightLine,
)
from markbench.model.rubric import Criterion, Level, Phrase, Rubric
from markbench.model.sentence import Figures, Sentence, joined, opening, reworded, say
from markbench.model.source import Source

__all__ = [
    "Analysis",
    "Brief",
    "ClassWork",
    "Concern",
    "Criterion",
    "Decision",
    "Diagnosis",
    "Doubt",
    "Draft",
    "Estimate",
    "Explanation",
    "Figures",
    "Finding",
    "Gravity",
    "Indistinct",
    "Late",
    "Learner",
    "Level",
    "LocalGravity",
    "Mark",
    "Match",
    "OwnQuantity",
    "OwnValue",
    "Phrase",
    "Piece",
    "PieceKind",
    "PieceState",
    "Place",
    "Portfolio",
    "Reading",
    "ReadingsTable",
    "Reason",
    "Row",
    "Rubric",
    "Sentence",
    "Source",
    "State",
    "StraightLine",
    "Timing",
    "Tolerances",
    "Who",
    "Words",
    "joined",
    "opening",
    "piece_states",
    "reworded",
    "say",
]
