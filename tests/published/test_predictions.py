"""Predictions of the operating point against published measurements.

Each row names a design of this folder, what is set in it, what the program's graph of
derived quantities then gives, what was measured, and how far apart the two may be.  A row
with a reason is off; its bounds hold it where it is today, on the side where an incomplete
sum must lie, so that a change in the model shows.  ``python tests/published/
test_predictions.py`` prints the table.
"""

from collections.abc import Callable, Mapping
from functools import cache
from pathlib import Path
from typing import NamedTuple

import pytest

from ampreview.linter.catalogue import load
from ampreview.linter.graph import Graph
from ampreview.linter.loading import Spec, load_file
from ampreview.linter.node import Node
from ampreview.rules.formulas.capacitor import reactive_current, series_rc_power
from ampreview.rules.formulas.lc import deviation_db, ladder_gain
from ampreview.rules.formulas.modulation import clipped_power_ratio
from ampreview.rules.formulas.pumping import offset_current

HERE = Path(__file__).parent
EACH = "channel."


class Row(NamedTuple):
    """One comparison.  low, high: bounds of predicted over (or less) measured."""

    quantity: str
    design: str
    condition: str
    predicted: Callable[[], float]
    measured: float
    unit: str
    low: float
    high: float
    off: str = ""


@cache
def spec_of(file: str) -> Spec:
    loaded = load_file(HERE / f"{file}.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    return loaded.spec


def graph(file: str, changes: Mapping[str, str]) -> Graph:
    """The graph of a design with some values set, those of ``channel.`` in every channel."""
    spec = spec_of(file)
    every = {path: x for path, x in changes.items() if not path.startswith(EACH)}
    for path in changes.keys() - every.keys():
        every |= {f"channels.{n}.{path.removeprefix(EACH)}": changes[path] for n in spec.channels}
    changed = spec.with_values(every)
    assert changed.spec is not None, changed.refusals
    return Graph(changed.spec, load().derived)


def nominal(file: str, quantity: str, changes: Mapping[str, str]) -> float:
    """A derived quantity of the first channel at the nominal values."""
    found = graph(file, changes)
    node = found.resolve(quantity, found.spec.channels[0])
    assert isinstance(node, Node), f"{quantity}: {node}"
    return float(node.value())


THESIS = "designs/thesis-full-bridge"
SPLIT_35 = "designs/split-half-bridge-35v"
SPLIT_50 = "designs/split-half-bridge-50v"
INTEGRATED = "designs/integrated-stereo-30v"
TWELVE = "designs/integrated-bridge-12v"

UNEXPLAINED = (
    "13 to 22 points below the 10.8 ohm rows at the same rail: no loss that follows from the"
    " data explains it; the author gives no cause"
)
NOT_PUBLISHED = (
    "a lower bound of the loss: core loss, recovery and output charge and the supply of the"
    " controller are not published; the low-power end shows 2.4 and 3.9 W of idle loss for each"
    " channel, of which the gates explain 0.4 and 0.6 W"
)
UPPER_BOUND = (
    "an upper bound: the on-resistance is printed without bonds, the inductors' resistance and"
    " the shortest pulse are not published"
)
LOOP_RISES = "the loop ends before the filter and rises itself, with 8 ohm most"


def at_power(file: str, volt: float, ohm: float, watt: float) -> dict[str, str]:
    return {
        "supply.v_rail": f"{volt} V",
        "channel.rated_load": f"{ohm} ohm",
        "channel.load_range": f"{ohm} ohm .. {ohm} ohm",
        "channel.rated_power": f"{watt} W",
    }


def efficiency(file: str, volt: float, ohm: float, watt: float, idle_too: int) -> float:
    """Per cent; ``idle_too`` further channels that idle on the same board."""
    changes = at_power(file, volt, ohm, watt)
    loss = nominal(file, "p_loss_rated", changes) + idle_too * nominal(file, "p_idle", changes)
    return 100 * watt / (watt + loss)


def efficiency_rows() -> list[Row]:
    """Points of efficiency; the thesis' input readings are good for 3 points."""
    thesis = [
        (5.1, 20.0, 7.34, 59.7),
        (5.1, 30.0, 15.62, 55.7),
        (5.1, 40.0, 27.69, 61.53),
        (5.1, 50.0, 55.54, 69.42),
        (10.8, 40.0, 26.62, 83.19),
        (10.8, 50.0, 41.07, 82.13),
        (10.8, 60.0, 57.13, 81.62),
        (10.8, 70.0, 75.84, 84.27),
    ]
    rows = []
    for ohm, volt, watt, found in thesis:
        low, high, off = (-3.0, 3.5, "") if ohm > 6 else (6.0, 18.0, UNEXPLAINED)
        rows.append(
            Row(
                "efficiency", "thesis, full bridge", f"{volt:g} V, {ohm:g} ohm, {watt:g} W",
                lambda o=ohm, v=volt, w=watt: efficiency(THESIS, v, o, w, 0),
                found, "%", low, high, off,
            )
        )  # fmt: skip
    split = [
        (SPLIT_35, 35.0, 59.8, 83.0),
        (SPLIT_35, 35.0, 120.2, 86.8),
        (SPLIT_50, 50.0, 133.0, 81.1),
        (SPLIT_50, 50.0, 244.9, 84.1),
    ]
    for file, volt, watt, found in split:
        rows.append(
            Row(
                "efficiency", "split half bridge", f"+-{volt:g} V, 4 ohm, {watt:g} W",
                lambda f=file, v=volt, w=watt: efficiency(f, v, 4.0, w, 1),
                found, "%", 4.0, 13.0, NOT_PUBLISHED,
            )
        )  # fmt: skip
    rows.append(
        Row(
            "efficiency", "split half bridge", "+-50 V, 4 ohm, 120 W, one channel, idle measured",
            claimed_120_w, 90.0, "%", -3.0, 3.0,
        )
    )  # fmt: skip
    return rows


def claimed_120_w() -> float:
    """The makers' claim for one channel, with the idle loss of a channel as measured."""
    changes = at_power(SPLIT_50, 50.0, 4.0, 120.0) | {"channel.output_stage.p_idle": "3.5 W"}
    return 100 * 120.0 / (120.0 + nominal(SPLIT_50, "p_loss_rated", changes))


def eighth_rows() -> list[Row]:
    """Loss at an eighth of the power, from efficiency at full power and idle loss.

    Columns: rail, load, total power and efficiency at clip onset (both channels), idle loss
    of both (the loss at 0.1 W), and the loss read off at an eighth, between two markers.
    """
    curves = [
        (INTEGRATED, 30.0, 3.0, 200.0, 80.39, 0.46, 7.93),
        (INTEGRATED, 30.0, 4.0, 200.0, 85.63, 0.46, 6.56),
        (INTEGRATED, 30.0, 8.0, 100.0, 90.4, 0.44, 2.51),
        (INTEGRATED, 24.0, 4.0, 120.0, 86.96, 0.28, 3.58),
        (INTEGRATED, 24.0, 8.0, 80.0, 91.72, 0.26, 1.70),
        (INTEGRATED, 12.0, 3.0, 40.0, 86.48, 0.09, 1.19),
        (INTEGRATED, 12.0, 4.0, 40.0, 89.17, 0.09, 0.99),
        (INTEGRATED, 12.0, 8.0, 20.0, 92.31, 0.07, 0.40),
        (SPLIT_35, 35.0, 4.0, 120.2, 86.8, 4.85, 7.19),
        (SPLIT_50, 50.0, 4.0, 244.9, 84.1, 7.75, 14.7),
    ]
    rows = []
    for file, volt, ohm, total, percent, idle, found in curves:
        channels = 2 if file == INTEGRATED else 1  # the split board drove one channel
        changes = at_power(file, volt, ohm, total / channels) | {
            "channel.output_stage.efficiency": f"{percent} %",
            "channel.output_stage.p_idle": f"{idle / channels} W",
            "signal.crest_factor": "12.041 dB",
        }
        rows.append(
            Row(
                "loss at 1/8 power", file.removeprefix("designs/"),
                f"{volt:g} V, {ohm:g} ohm, {total / 8:.3g} W",
                lambda f=file, c=changes, n=channels: n * nominal(f, "p_loss_programme", c),
                found, "W", 0.85, 1.2,
            )
        )  # fmt: skip
    return rows


PER_VOLT = {
    8: (6.51, 3.51), 10: (10.1, 5.5), 12: (14.6, 7.91), 15: (22.8, 12.4), 18: (32.7, 17.9),
    20: (40.3, 22.1), 24: (57.6, 31.9), 28: (77.4, 43.3), 30: (88.1, 49.7),
}  # fmt: skip
INFERRED = {
    "channel.output_stage.r_series": "0.14 ohm",
    "channel.gate_drive.t_pulse_min": "40 ns",
}


def at_distortion(file: str, changes: Mapping[str, str], thd: float) -> float:
    """Power at a distortion: clip onset and what clipping adds."""
    return nominal(file, "p_out_max", changes) * float(clipped_power_ratio(thd))


def power_rows() -> list[Row]:
    """Largest power; the aim is 8 per cent."""
    rows = [
        Row("power at 1 %", "split half bridge", f"+-{volt:g} V, 4 ohm",
            lambda f=file, w=found: at_distortion(f, {"channel.rated_power": f"{w} W"}, 0.01),
            found, "W", 0.92, 1.08)
        for file, volt, found in ((SPLIT_35, 35.0, 145.0), (SPLIT_35, 35.0, 142.0),
                                  (SPLIT_50, 50.0, 289.0), (SPLIT_50, 50.0, 300.0))
    ]  # fmt: skip
    rows += [
        Row("power at 5 %", "split half bridge", "+-35 V, 4 ohm",
            lambda: at_distortion(SPLIT_35, {}, 0.05), 162.0, "W", 0.92, 1.08),
        Row("power at 10 %", "split half bridge", "+-50 V, 4 ohm",
            lambda: at_distortion(SPLIT_50, {}, 0.10), 400.0, "W", 0.92, 1.08),
        Row("power at 1 %", "integrated bridge", "12 V, 8 ohm, vendor's estimate",
            lambda: at_distortion(TWELVE, {}, 0.01), 8.1, "W", 0.92, 1.08),
        Row("power at 1 %", "integrated bridge", "12 V, 4 ohm, vendor's estimate",
            lambda: at_distortion(TWELVE, {"channel.rated_load": "4 ohm",
                                           "channel.rated_power": "9.5 W"}, 0.01),
            14.8, "W", 0.92, 1.08),
    ]  # fmt: skip
    for volt, pair in PER_VOLT.items():
        for ohm, found in zip((4.0, 8.0), pair, strict=True):
            changes = at_power(INTEGRATED, volt, ohm, found)
            rows.append(
                Row("power at 1 %", "integrated stereo", f"{volt} V, {ohm:g} ohm",
                    lambda c=changes: at_distortion(INTEGRATED, c, 0.01), found, "W",
                    1.1, 1.23, UPPER_BOUND)
            )  # fmt: skip
            if volt > 8:
                rows.append(
                    Row("power at 1 %", "integrated stereo, path and pulse from the 8 V rows",
                        f"{volt} V, {ohm:g} ohm",
                        lambda c=changes: at_distortion(INTEGRATED, c | INFERRED, 0.01),
                        found, "W", 0.95, 1.05)
                )  # fmt: skip
    return rows


def clip_rows() -> list[Row]:
    """Power at 10 % over that at 1 %, which needs nothing of the design."""
    pairs = [
        ("integrated stereo", "30 V, 4 ohm", 107.7 / 88.1, ""),
        ("integrated stereo", "30 V, 8 ohm", 61.2 / 49.7, ""),
        ("integrated stereo", "8 V, 4 ohm", 8.11 / 6.51, ""),
        ("split half bridge", "+-50 V, 4 ohm", 400.0 / 300.0, ""),
        ("split half bridge, 250 W", "+-50 V, 4 ohm", 350.0 / 250.0,
         "both rounded; 400 W at 10 % would fit"),
    ]  # fmt: skip
    return [
        Row("power at 10 % over 1 %", design, condition,
            lambda: float(clipped_power_ratio(0.10) / clipped_power_ratio(0.01)),
            found, "1", 0.87, 1.08 if not off else 0.92, off)
        for design, condition, found, off in pairs
    ]  # fmt: skip


def response_rows() -> list[Row]:
    """Response against 1 kHz of 22 uH, 0.47 uF and the damper; the aim is 0.25 dB."""
    points = [
        (4.0, 10e3, 0.05, ""), (4.0, 15e3, -0.19, ""), (4.0, 20e3, -0.67, ""),
        (8.0, 10e3, 0.67, LOOP_RISES), (8.0, 15e3, 1.21, LOOP_RISES), (8.0, 20e3, 1.64, LOOP_RISES),
    ]  # fmt: skip
    rows = []
    for ohm, f, found, off in points:
        low, high = (-0.25, 0.25) if not off else (-0.6, -0.25)
        rows.append(
            Row("response", "split half bridge", f"{ohm:g} ohm, {f / 1e3:g} kHz",
                lambda z=ohm, f=f: float(deviation_db(f, 22e-6, 0.47e-6, z, 0.0, 0.02, 0.0, 0.0,
                                                      10.0, 0.1e-6)),
                found, "dB", low, high, off)
        )  # fmt: skip
    return rows


def other_rows() -> list[Row]:
    """Idle loss, pumping and single numbers that a notebook or a data sheet prints."""
    fifteen = "failures/peaking-15-ohm"
    l_total, c_total = (nominal(fifteen, q, {}) for q in ("l_total", "c_total"))
    return [
        Row("idle loss", "integrated stereo", "30 V, 15 mA printed beside 0.37 W",
            lambda: 2 * nominal(INTEGRATED, "p_idle", {}), 0.45, "W", 1 / 1.5, 1.5),
        Row("idle loss", "split half bridge", "+-35 V, both channels",
            lambda: 2 * nominal(SPLIT_35, "p_idle", {}), 4.85, "W", 0.1, 0.5, NOT_PUBLISHED),
        Row("idle loss", "split half bridge", "+-50 V, both channels",
            lambda: 2 * nominal(SPLIT_50, "p_idle", {}), 7.0, "W", 0.1, 0.5, NOT_PUBLISHED),
        Row("current pumped by 2 V of offset", "coil driver", "75 V, 1 ohm assumed",
            lambda: float(offset_current(2.0, 1.0, 75.0)), 1.0, "A", 0.9, 1.1),
        Row("peak gain of the filter", "bridge into 15 ohm", "50.8 kHz",
            lambda: float(ladder_gain(50.8e3, l_total, c_total, 15.0, 0.0, 0.0, 0.0)),
            2.25, "1", 0.92, 1.08),
        Row("capacitor current at 25 kHz", "film capacitor", "1 uF, 50 V peak",
            lambda: float(reactive_current(25e3, 1e-6, 50.0)), 8.0, "A peak", 0.95, 1.25),
        Row("power of the damper", "coil driver", "40 ohm, 100 nF, 35 V, 13.5 kHz",
            lambda: float(series_rc_power(35.0, 13.5e3, 40.0, 100e-9)), 3.0, "W", 0.9, 1.1),
        Row("ripple at a duty of 0.69", "notebook bridge", "26 V, 33 uH, 250 kHz, peak to peak",
            lambda: nominal("failures/notebook-bridge-26v", "ripple_idle", {}) * (1 - 0.38**2),
            0.67, "A", 0.97, 1.03),
        Row("largest sine", "24 V bridge", "46.8 V peak to peak; lossless bound",
            lambda: 2 * nominal("failures/power-above-rail-24v", "v_ideal", {}),
            46.8, "V", 1.0, 1.05),
    ]  # fmt: skip


ROWS = [
    *efficiency_rows(), *eighth_rows(), *power_rows(), *clip_rows(), *response_rows(),
    *other_rows(),
]  # fmt: skip
BY_DIFFERENCE = ("efficiency", "response")


def deviation(row: Row) -> float:
    predicted = row.predicted()
    if row.quantity in BY_DIFFERENCE:
        return predicted - row.measured
    return predicted / row.measured


@pytest.mark.parametrize("row", ROWS, ids=lambda x: f"{x.quantity}-{x.design}-{x.condition}")
def test_prediction(row: Row) -> None:
    assert row.low <= deviation(row) <= row.high


def test_most_rows_agree() -> None:
    """The share of rows that need an excuse may not grow unseen."""
    assert sum(1 for row in ROWS if row.off) < len(ROWS) / 2


def test_an_integrated_part_without_curve_stays_open() -> None:
    """Its on-resistance alone gives a third of the measured loss: never a pass on it."""
    found = graph(INTEGRATED, {})
    node = found.resolve("p_loss_rated", "a")
    assert isinstance(node, Node)
    assert any(item.leaning == "floor" for item in node.leaned)
    assert 2 * float(node.value()) < 29.97


def test_dead_time_of_the_thesis_is_heard_and_a_short_one_is_not() -> None:
    """The author's circuit simulation: strong distortion with 350 ns, none seen with 30 ns."""
    share = nominal(THESIS, "t_dead_distortion", {"channel.gate_drive.dead_time": "350 ns"})
    assert share * 165e3 > 0.02
    short = nominal(THESIS, "t_dead_distortion", {"channel.gate_drive.dead_time": "30 ns"})
    assert short == 0.0


def table() -> str:
    """All rows as a Markdown table, those that agree first."""
    lines = ["| quantity | design | condition | predicted | measured | unit | deviation |"]
    lines.append("|---|---|---|---|---|---|---|")
    for row in sorted(ROWS, key=lambda x: bool(x.off)):
        by = deviation(row)
        text = f"{by:+.2f}" if row.quantity in BY_DIFFERENCE else f"{100 * (by - 1):+.0f} %"
        text += " (off)" if row.off else ""
        lines.append(
            f"| {row.quantity} | {row.design} | {row.condition} | {row.predicted():.3g} |"
            f" {row.measured:.3g} | {row.unit} | {text} |"
        )
    return "\n".join(lines)


if __name__ == "__main__":
    print(table())
