"""The slips in words: what each is, what to ask, what to tell the learner, what settles it.

One entry for every slip of the priors (a test keeps the two complete). Sentences are plain
text with named places in braces; the places each slip can fill are those of ``FIELDS``
plus its own parameters. Nothing here accuses: a slip is how honest work goes wrong, and
times that were made up are a question like any other.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class SlipWords:
    """Words for one slip.

    ``title`` a short name; ``teacher`` what happened and how the numbers show it;
    ``sentence`` the explanation with this learner's numbers, for the teacher, and ``beside``
    the same in a few words, for a table that needs two; ``ask`` the question for the learner;
    ``learner`` the feedback to a fifteen-year-old and ``mended`` what g then is, left away
    beside another slip; ``settle`` what would decide.
    """

    title: str
    teacher: str
    sentence: str
    beside: str
    ask: str
    learner: str
    mended: str
    settle: str


SLIPS: dict[str, SlipWords] = {
    "half_swings": SlipWords(
        "half swings counted",
        "Each passage from one side to the other was counted as a swing, so that only half "
        "the stated number of complete swings went by: times are half of what the lengths "
        "need, and g comes out four times too large.",
        "Counting half swings would explain these times: {swings} counted would be "
        "{really} complete swings, and g becomes {g_mended} instead of {g_before}.",
        "half swings counted ({swings} counted would be {really} complete swings)",
        "Where does one of your swings start, and where does it end?",
        "One swing is there and back again: it ends where it started, moving the same way. "
        "Your times fit {really} complete swings, not {swings}, so it looks as if there "
        "and back were counted as two.",
        "Counted this way, your readings give g = {g_mended}.",
        "ask how the {swings} swings were counted; the video would show it",
    ),
    "count_short": SlipWords(
        "one swing too few in every timing",
        "The watch was started on “one” instead of “nought”, so that every timing holds "
        "one swing fewer than stated: all times are short by one period.",
        "One swing too few in every timing would explain these times: {really} swings "
        "instead of {swings}, and g becomes {g_mended} instead of {g_before}.",
        "one swing too few in every timing ({really} instead of {swings})",
        "What number did you say as you started the watch?",
        "Start the watch on “nought”, not on “one”: the first swing is only finished when "
        "the bob comes back. Your times fit {really} swings, not {swings}.",
        "Divided by {really}, your readings give g = {g_mended}.",
        "ask which number was said when the watch was started; the video would show it",
    ),
    "count_over": SlipWords(
        "one swing too many in every timing",
        "The watch was stopped one swing late every time: all times are long by one period.",
        "One swing too many in every timing would explain these times: {really} swings "
        "instead of {swings}, and g becomes {g_mended} instead of {g_before}.",
        "one swing too many in every timing ({really} instead of {swings})",
        "At which number did you stop the watch, and what did you count at the start?",
        "Your times fit {really} swings, not {swings}: it looks as if the watch was "
        "stopped one swing late each time.",
        "Divided by {really}, your readings give g = {g_mended}.",
        "ask at which number the watch was stopped; the video would show it",
    ),
    "one_timing_miscounted": SlipWords(
        "one timing with a swing too many or too few",
        "A single timing departs from the others by one period: one swing was missed or "
        "counted twice in that timing alone.",
        "A miscount in one timing would explain it: {time} s at {length} ({timing}) fits "
        "{really} swings instead of {swings}, and g becomes {g_mended} instead of "
        "{g_before}.",
        "a miscount in one timing ({time} s at {length} would be {really} swings)",
        "How sure are you of the count in {timing} at {length}?",
        "Your {time} s at {length} ({timing}) fits {really} swings, not {swings}; your "
        "other times fit one another. When one time stands out like this, time it again.",
        "Without the miscount your readings give g = {g_mended}.",
        "have {timing} at {length} taken again",
    ),
    "length_to_top": SlipWords(
        "lengths to the top of the bob",
        "Lengths were measured to the top of the bob instead of its middle: every length "
        "is short by the same amount, which shows most at the shortest.",
        "Lengths measured to the top of the bob would explain it: each is short by about "
        "{size}, and g becomes {g_mended} instead of {g_before}.",
        "lengths measured to the top of the bob (each short by about {size})",
        "From where to where on the pendulum did you measure?",
        "The length of a pendulum runs to the middle of the bob. Yours look about {size} "
        "too short, all alike, as if you had stopped at the top of the bob.",
        "With that added, your readings give g = {g_mended}.",
        "ask from where to where the length was measured, or look at the set-up photo; "
        "measure the bob",
    ),
    "length_to_bottom": SlipWords(
        "lengths to the bottom of the bob",
        "Lengths were measured to the bottom of the bob instead of its middle: every "
        "length is long by the same amount, which shows most at the shortest.",
        "Lengths measured to the bottom of the bob would explain it: each is long by about "
        "{size}, and g becomes {g_mended} instead of {g_before}.",
        "lengths measured to the bottom of the bob (each long by about {size})",
        "From where to where on the pendulum did you measure?",
        "The length of a pendulum runs to the middle of the bob. Yours look about {size} "
        "too long, all alike, as if you had gone on to the bottom of the bob.",
        "With that taken off, your readings give g = {g_mended}.",
        "ask from where to where the length was measured, or look at the set-up photo; "
        "measure the bob",
    ),
    "whole_thread": SlipWords(
        "the whole thread measured",
        "The thread was measured whole, knot and tail included: every length is long by "
        "the same several centimetres.",
        "Measuring the whole thread, knot and tail included, would explain it: each length "
        "is long by about {size}, and g becomes {g_mended} instead of {g_before}.",
        "the whole thread measured, knot and tail included (each length long by about {size})",
        "Did you measure the thread before or after tying it? From where to where?",
        "Measure the length when the pendulum hangs: from the underside of the support to "
        "the middle of the bob. Yours look about {size} too long, all alike, as if the "
        "knot and the loose end had been measured too.",
        "Without that, your readings give g = {g_mended}.",
        "ask when and where the thread was measured; the set-up photo may show knot and tail",
    ),
    "length_unit": SlipWords(
        "lengths in another unit",
        "The lengths were written in another unit than the one they were read in.",
        "Lengths meant in {unit} would explain it: {length_typed} would be {length_meant}, "
        "and g becomes {g_mended} instead of {g_before}.",
        "lengths meant in {unit} ({length_typed} would be {length_meant})",
        "Which unit is your ruler marked in, and which did you write down?",
        "Your lengths fit if they were {unit}: what reads as {length_typed} in your table "
        "would be {length_meant}. Write the unit at the head of the column and check it "
        "against something you know.",
        "Put right, your readings give g = {g_mended}.",
        "ask to see the ruler, or look at the set-up photo",
    ),
    "period_as_total": SlipWords(
        "periods in the column of total times",
        "The time of one swing was typed where the time of all of them belongs.",
        "Periods typed in place of total times would explain it: {time} s is the time of "
        "one swing, not of {swings}, and g becomes {g_mended} instead of {g_before}.",
        "periods typed in place of total times ({time} s would be one swing)",
        "Is {time} s what the watch showed, or did you divide it first?",
        "The {time} s you wrote at {length} is the time of one swing, not of {swings}. "
        "Write down what the watch showed and divide afterwards, so that anyone can check "
        "it.",
        "Read as periods, your readings give g = {g_mended}.",
        "ask what the watch showed",
    ),
    "clock_misread": SlipWords(
        "minutes and seconds run together",
        "The display of the watch was misread or mistyped where minutes meet seconds.",
        "A misread display ({form}) would explain it: {time} s at {length} would be "
        "{time_meant} s, and g becomes {g_mended} instead of {g_before}.",
        "a misread display ({form}: {time} s at {length} would be {time_meant} s)",
        "What exactly did the watch show for {length}, sign by sign?",
        "Look again at how your watch shows minutes, seconds and hundredths: the {time} s "
        "you wrote at {length} fits {time_meant} s ({form}).",
        "Put right, your readings give g = {g_mended}.",
        "ask to see the watch with a time on it",
    ),
    "wide_swing": SlipWords(
        "a wide swing",
        "The pendulum was let go from so far out that its period grew: from about 35° on, "
        "by 2 % and more, alike at every length.",
        "A wide swing, released at about {amplitude}, would explain periods that are all "
        "long by the same share.",
        "a wide swing, released at about {amplitude}",
        "How far out did you pull the bob before letting go?",
        "Keep the swing small: a bob pulled out to a third of the thread's length is far "
        "enough. Your periods are all a little long, by the same share, as they would be "
        "if you let go at about {amplitude} from the vertical.",
        "",
        "ask how far the bob was pulled out; the video would show it",
    ),
    "mistyped_cell": SlipWords(
        "one cell mistyped",
        "One number does not fit its neighbours, but does with two digits changed over or "
        "the decimal point moved.",
        "A typing slip in one cell would explain it: {typed} at {where} fits its "
        "neighbours as {meant}, and g becomes {g_mended} instead of {g_before}.",
        "a typing slip in one cell ({typed} at {where}, meant as {meant})",
        "What do your first notes say for {where}?",
        "Look at {where} in your table: you typed {typed}, and {meant} would fit your "
        "other readings. Check it against your notes.",
        "With {meant}, your readings give g = {g_mended}.",
        "look at the learner's first notes for {where}",
    ),
    "rows_swapped": SlipWords(
        "two rows exchanged",
        "The times of two lengths stand in each other's place.",
        "Two rows exchanged would explain it: the times beside {length} and {other_length} "
        "fit the other way about, and g becomes {g_mended} instead of {g_before}.",
        "two rows exchanged (the times beside {length} and {other_length})",
        "Which of these times belongs to {length}, and which to {other_length}?",
        "The times you wrote beside {length} and {other_length} fit the other way about: a "
        "longer pendulum takes longer. Check them against your notes.",
        "Exchanged, your readings give g = {g_mended}.",
        "look at the learner's first notes for {length} and {other_length}",
    ),
    "made_from_formula": SlipWords(
        "times nearer to the formula than a hand can time",
        "The times lie closer to the formula than hand timing, about 0.1 s a timing, "
        "allows. Careful learners with a good method exist; talk before concluding.",
        "Times worked out from the formula rather than taken by hand would explain it: they "
        "lie within about {misfit} s of g = {formula_g} m/s², while hand timing usually "
        "scatters by about 0.1 s. A careful hand may come as near.",
        "times within about {misfit} s of the formula with g = {formula_g} m/s²",
        "How did you time one length, and what do your first notes say?",
        "Your times agree with the formula to about {misfit} s, closer than the 0.1 s by "
        "which a hand on a stopwatch usually varies. Tell me how you timed them. What "
        "counts is what your watch showed, even where it does not fit.",
        "",
        "watch one length being timed again",
    ),
    "made_by_hand": SlipWords(
        "repeats closer than a hand can repeat",
        "Repeated timings agree more closely than hand timing, about 0.1 s a timing, "
        "allows, while the lengths among themselves scatter as usual. Careful learners "
        "exist; talk before concluding.",
        "Repeats written down after the first timing rather than taken by hand would explain "
        "it: they agree to about {misfit} s, while hand timing usually scatters by about 0.1 "
        "s from one timing to the next. A careful hand may come as near.",
        "repeats that agree to about {misfit} s",
        "How did you take the second timing of a length?",
        "Your repeated times agree to about {misfit} s, closer than the 0.1 s by which a "
        "hand on a stopwatch usually varies. Tell me how you took the second times. "
        "Repeats that differ are a good sign: they show how sure you can be.",
        "",
        "watch one length being timed twice",
    ),
}
