"""A limiter set to the loudspeaker that is there.

The long-term level is what the noise rating of the loudspeakers allows, the fast one twice that
in power: twice the voltage for the peak of noise with a crest factor of two.  Where the
rated power lies above it, the limiter takes part of what is promised, and the review says so.
"""

from ...linter.check import Input, Source
from ...linter.design_change import DesignChange, Follow


def noise_voltage(p: float, z: float, series: float, parallel: float) -> float:
    """Voltage across the network at which each loudspeaker takes its noise rating."""
    return (p * series * parallel * z) ** 0.5


def noise_peak(p: float, z: float, series: float, parallel: float) -> float:
    """Twice that: the peak of noise with a crest factor of two."""
    return 2 * noise_voltage(p, z, series, parallel)


_NETWORK = {
    "p": Input("p_driver_noise"),
    "z": Input("z_network"),
    "series": Input("loudspeaker.series"),
    "parallel": Input("loudspeaker.parallel"),
}

CHANGE = DesignChange(
    title="a limiter set to the loudspeaker",
    kind="part",
    helps=("loudspeaker-clipped-power", "loudspeaker-power-match"),
    follows=(
        Follow("limiter.v_rms", noise_voltage, _NETWORK, "0.5 V", "down", new=True),
        Follow("limiter.v_peak", noise_peak, _NETWORK, "0.5 V", "down", new=True),
    ),
    sources=(
        Source(
            "IEC 268-5:1989 as quoted on public pages on loudspeaker tests",
            "noise with a crest factor of two",
            kind="quoted",
        ),
    ),
)
