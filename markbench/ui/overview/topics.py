"""Figure: what to teach again, a bar for each slip and each check with learners behind it."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter

from markbench.session.overview import Topic
from markbench.ui.look.said import said
from markbench.ui.overview.figure import (
    Look,
    Spot,
    hatch,
    learners_told,
    say_empty,
    solid,
    tr,
    words,
)


@dataclass(frozen=True, slots=True)
class TopicsFigure:
    """Bars as long as the number of learners; slips filled, checks hatched."""

    topics: tuple[Topic, ...]
    learners: int
    key: str = "teach-again"

    @property
    def title(self) -> str:
        """What it shows."""
        return tr("What to teach again")

    @property
    def empty(self) -> str:
        """Why there is nothing to show."""
        if self.topics:
            return ""
        return tr("No slip stands out and no check asks. There is nothing to teach again.")

    @property
    def caption(self) -> str:
        """n, and what counts."""
        return tr(
            "{n_learners}. A slip counts where you agreed to it or it explains the readings "
            "far better than honest scatter; a check counts where it has a question for the "
            "learner. One learner may stand behind several. These are questions, not marks."
        ).format(n_learners=learners_told(self.learners))

    def height(self, look: Look) -> float:
        """Two lines and a bar for each."""
        # The key may need a second line, in a narrow column or another language.
        return 34 * look.scale + 1.2 * look.line() + len(self.topics) * self._row(look)

    def _row(self, look: Look) -> float:
        return round(look.line() + 19 * look.scale)

    def paint(self, painter: QPainter, box: QRectF, look: Look) -> list[Spot]:
        """Titles over their bars."""
        if self.empty:
            return say_empty(painter, box, self.empty, look)
        colours, line, row = look.palette, look.line(), self._row(look)
        top = self._paint_key(painter, box, look) + 26 * look.scale
        count_room = 34 * look.scale
        most = max(len(topic.learners) for topic in self.topics)
        spots = []
        for number, topic in enumerate(self.topics):
            place = QRectF(box.left(), top + number * row, box.width(), row)
            painter.setFont(look.font())
            title = QRectF(place.left(), place.top(), place.width(), line)
            words(painter, title, said(topic.title), colours.ink)
            long = (place.width() - count_room) * len(topic.learners) / most
            bar = QRectF(place.left() + 0.5, place.top() + line + 3 * look.scale, long,
                         8 * look.scale)  # fmt: skip
            (solid if topic.is_slip else hatch)(painter, bar, colours.data)
            painter.setFont(look.font(bold=True))
            beside = QRectF(bar.right() + 6, bar.center().y() - line / 2, count_room, line)
            words(painter, beside, str(len(topic.learners)), colours.ink)
            spots.append(Spot(place, self._words(topic), topic.learners))
        return spots

    def _words(self, topic: Topic) -> str:
        count = tr("{title}: {n} of {of} learners").format(
            title=said(topic.title), n=len(topic.learners), of=self.learners
        )
        if topic.agreed:
            count += tr(", {n} agreed by you").format(n=len(topic.agreed))
        return f"{count}\n{said(topic.explanation)}"

    def _paint_key(self, painter: QPainter, box: QRectF, look: Look) -> float:
        """What the bars are, on a second line where one has no room; the top of the last line."""
        line, x, y = look.line(), box.left(), box.top()
        painter.setFont(look.font())
        for draw, text in ((solid, tr("a slip that explains the readings")),
                           (hatch, tr("a check that asks"))):  # fmt: skip
            wide, bar = look.metrics().horizontalAdvance(text) + 4, 22 * look.scale
            if x > box.left() and x + bar + 6 + wide > box.right():
                x, y = box.left(), y + 1.2 * line
            sample = QRectF(x + 0.5, y + line * 0.25, bar, 8 * look.scale)
            draw(painter, sample, look.palette.data)
            words(painter, QRectF(sample.right() + 6, y, wide, line), text, look.palette.pencil)
            x = sample.right() + wide + 20 * look.scale
        return y
