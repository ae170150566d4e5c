"""The pressure of a made-up tool, one value for each question: rest, a steady climb to the peak, rest again."""

PEAKS = [701.25, 698.5, 703.0, 699.75, 250.0, 700.5]
REST, CLIMB = 30, 40


class Strokes:
    def __init__(self, first=0):
        self.asked = 0
        self.stroke = first

    def next(self):
        at = self.asked % (REST + CLIMB)
        if self.asked and at == 0:
            self.stroke += 1
        self.asked += 1
        return 0.0 if at < REST else PEAKS[self.stroke % len(PEAKS)] * (at - REST + 1) / CLIMB
