"""Every question Markbench can put, in one list: what it asks, why, and on which numbers.

Questions that arise elsewhere (while reading files, looking at the evidence, weighing
explanations, comparing learners) are listed too, so that no finding is ever shown without
an explanation. A test holds the list complete.
"""

from __future__ import annotations

from markbench.checks import design, numbers, pieces, written
from markbench.checks.question import Check, Origin


def _elsewhere(
    origin: Origin,
    id: str,
    title: str,
    explanation: str,
    rests_on: str,
    judges_numbers: bool = False,
) -> Check:
    return Check(id, title, explanation, rests_on, None, origin, judges_numbers)


_ALL = (
    Check(
        "missing_piece",
        "A piece is missing",
        "The brief asks for a piece of evidence that is not in the portfolio, or is an empty file.",
        "the files handed in and the brief's list of evidence",
        pieces.missing_piece,
    ),
    Check(
        "outside_window",
        "Handed in outside the dates",
        "The latest file carries a date outside the brief's window or the learner's extension. "
        "Copying and sending files can change their dates.",
        "file dates, the brief's dates, extensions",
        pieces.outside_window,
    ),
    Check(
        "too_few_lengths",
        "Fewer lengths than asked",
        "A straight line needs enough points; the brief says how many.",
        "number of different lengths that were timed",
        design.too_few_lengths,
    ),
    Check(
        "too_few_timings",
        "Timings not repeated",
        "Repeating a timing shows its scatter and lessens random error.",
        "number of timings at each length",
        design.too_few_timings,
    ),
    Check(
        "short_range",
        "Lengths too close together",
        "A short range of lengths leaves the slope, and so g, uncertain.",
        "longest length over shortest, against the brief's ratio",
        design.short_range,
    ),
    Check(
        "uneven_lengths",
        "Lengths unevenly spread",
        "One wide gap makes the line rest on two clusters of points.",
        "the widest gap as a share of the whole range",
        design.uneven_lengths,
    ),
    Check(
        "length_out_of_range",
        "A length outside the sensible range",
        "Often a unit, sometimes a length that the support could not hold.",
        "each length, the brief's range and support height",
        design.length_out_of_range,
    ),
    Check(
        "too_few_swings",
        "Fewer swings to a timing",
        "Hand scatter is shared out over the swings of a timing: fewer swings, rougher periods.",
        "swings per timing, against the brief",
        design.too_few_swings,
    ),
    Check(
        "period_off_law",
        "A timing far from the local law",
        "Each timing is set against N·2π√(L/g) with local g, allowing for hand scatter, a few "
        "millimetres of length and a small amplitude.",
        "each timing, its length, local g, scatter of the learner's repeats",
        numbers.period_off_law,
        judges_numbers=True,
    ),
    Check(
        "g_implausible",
        "g of the line far from local g",
        "The slope of the learner's own line against the local one, in units of its uncertainty. "
        "A rough line may be far off and still be honest; this asks only when it is not rough.",
        "slope and its uncertainty, local g",
        numbers.g_implausible,
        judges_numbers=True,
    ),
    Check(
        "timing_departs",
        "A timing departs from its repeat",
        "Two timings of one length differ by more than the scatter of the others allows; often "
        "one swing more or fewer was counted.",
        "repeats at one length, scatter of all repeats",
        numbers.timing_departs,
        judges_numbers=True,
    ),
    Check(
        "off_the_line",
        "A point off the line of the others",
        "The externally studentised residual of the straight line, with the chance shared over "
        "all points.",
        "T² and L of all points",
        numbers.off_the_line,
        judges_numbers=True,
    ),
    Check(
        "intercept",
        "The line misses the origin",
        "T² is proportional to the length from support to the middle of the bob; a shift of "
        "every length by the same amount shows as an intercept.",
        "intercept and its uncertainty",
        numbers.intercept,
        judges_numbers=True,
    ),
    Check(
        "own_arithmetic",
        "Own arithmetic comes out differently",
        "Means, T, T² and g in the learner's table are worked out again from the raw readings, "
        "following the learner's own rounding.",
        "each derived value and the raw readings it comes from",
        written.own_arithmetic,
    ),
    Check(
        "decimals_uneven",
        "Decimals not consistent",
        "Raw readings of one instrument carry the same number of decimals. Spreadsheets drop "
        "trailing zeros, and that is allowed for.",
        "decimals of each raw time",
        written.decimals_uneven,
        judges_numbers=True,
    ),
    Check(
        "heading_without_unit",
        "A heading without its unit",
        "A column is headed quantity / unit (SI Brochure, 9th ed., 5.4.1).",
        "the headings as typed",
        written.heading_without_unit,
    ),
    _elsewhere(
        "intake",
        "table_not_understood",
        "The table could not be read",
        "No columns of length and time could be made out. The columns can be pointed at, or the "
        "readings typed in, and the choice is recorded.",
        "the cells of the file",
    ),
    _elsewhere(
        "intake",
        "value_not_understood",
        "A cell is not a number",
        "A cell among the readings could not be read as a number and was left out.",
        "the cell as typed",
    ),
    _elsewhere(
        "intake",
        "unit_guessed",
        "A unit was guessed",
        "No unit stands in the heading or the cells; the size of the numbers suggested one.",
        "the numbers and the pendulum's law",
    ),
    _elsewhere(
        "intake",
        "swings_guessed",
        "The number of swings was taken from the brief",
        "The table does not say how many swings a timing took.",
        "the brief",
    ),
    _elsewhere(
        "intake",
        "column_guessed",
        "The meaning of a column was guessed",
        "No heading said what a column holds; its numbers suggested it.",
        "the numbers of the column and the pendulum's law",
    ),
    _elsewhere(
        "intake",
        "time_form_guessed",
        "The form of a time was guessed",
        "A stopwatch form such as 0:14:23 can be read in two ways; the likelier was taken.",
        "the cell as typed",
    ),
    _elsewhere(
        "intake",
        "several_tables",
        "Several tables were found",
        "More than one table of readings is in the file; one was taken.",
        "the sheets and blocks of the file",
    ),
    _elsewhere(
        "intake",
        "unreadable_file",
        "A file does not open",
        "The file is damaged, too large, or not what its name says.",
        "the file",
    ),
    _elsewhere("intake", "empty_piece", "A file is empty", "The file has no bytes.", "the file"),
    _elsewhere(
        "intake",
        "later_hand_in",
        "Handed in again",
        "A later piece of the same kind came in; the later one is used and the earlier one kept.",
        "names and dates of both files",
    ),
    _elsewhere(
        "intake",
        "folder_problem",
        "A question about the class folder",
        "Something in the brief or the class list could not be used as it stands.",
        "brief.toml, the class list",
    ),
    _elsewhere(
        "diagnosis",
        "slip",
        "An explanation fits better than honest scatter",
        "Honest work is weighed against each way it commonly goes wrong; one of them fits these "
        "readings far better.",
        "all lengths and timings, local g",
    ),
    _elsewhere(
        "class",
        "copied",
        "Two tables agree beyond chance",
        "Readings of two learners agree more closely than independent hands give. A shared "
        "set-up, a declared partner or one table for a pair explains it.",
        "the timings of both learners",
        judges_numbers=True,
    ),
    _elsewhere(
        "evidence",
        "photo_unreadable",
        "A photo does not open",
        "The picture is damaged, too large, or not a picture.",
        "the file",
    ),
    _elsewhere(
        "evidence",
        "photo_small",
        "A photo is very small",
        "Too few pixels to see the set-up.",
        "width and height",
    ),
    _elsewhere(
        "evidence",
        "photo_blank",
        "A photo shows nothing",
        "Nearly all of the picture is of one brightness.",
        "spread of brightness",
    ),
    _elsewhere(
        "evidence",
        "photo_blurred",
        "A photo is badly blurred",
        "Little fine detail at a fixed viewing size.",
        "sharpness measure",
    ),
    _elsewhere(
        "evidence",
        "photo_repeated",
        "The same picture twice",
        "The picture matches another piece or another learner's; partners may share one.",
        "fingerprints of both pictures",
    ),
    _elsewhere(
        "evidence",
        "photo_date",
        "A photo dated outside the window",
        "The date inside the picture lies outside the brief's dates; phones are often wrong.",
        "the date tag of the picture",
    ),
    _elsewhere(
        "evidence",
        "video_unreadable",
        "The video does not open",
        "The video is damaged, too large, or not a video.",
        "the file",
    ),
    _elsewhere(
        "evidence",
        "video_not_measured",
        "The video could not be measured",
        "No single clear swing could be followed; the reason is given.",
        "the video",
    ),
    _elsewhere(
        "evidence",
        "video_few_swings",
        "Fewer swings in the video than asked",
        "The video shows fewer complete swings than the brief asks for.",
        "counted swings",
    ),
    _elsewhere(
        "evidence",
        "video_period",
        "The video's period differs from the table's",
        "The period measured in the video fits none of the learner's own, or fits another count "
        "of swings.",
        "period measured in the video, the learner's periods",
    ),
)

CHECKS: dict[str, Check] = {check.id: check for check in _ALL}
