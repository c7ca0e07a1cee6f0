"""Run-out of work: how far it is off the axis, what stock cleans it up, what a pass leaves of it."""

from tailtrue.calc.boring_passes import share_left
from tailtrue.calc.validity import OutOfRange, at_least, positive


def eccentricity(run_out_mm: float) -> float:
    """Distance of the middle of work from the axis.

    e = TIR / 2

    Parameters
    ----------
    run_out_mm : Run-out TIR, the whole swing of an indicator in one turn. [mm]

    Returns
    -------
    Eccentricity e. [mm]

    Valid for
    ---------
    Run-out 0 or more, of round work.

    Source
    ------
    Geometry.

    >>> eccentricity(0.1)
    0.05
    """
    at_least(run_out_mm, 0, "run-out", "mm")
    return run_out_mm / 2


def collar_eccentricity(bore_run_out_mm: float, diametral_clearance_mm: float, centre_eccentricity_mm: float) -> float:
    """Farthest that the outside of a collar on its bar can lie off the axis, everything adding up.

    e = TIR / 2 + c / 2 + e_c

    Parameters
    ----------
    bore_run_out_mm : Run-out TIR of the bore against the outside of the collar. [mm]
    diametral_clearance_mm : Diametral clearance c between bore and bar. [mm]
    centre_eccentricity_mm : Distance e_c of the centre holes from the middle of the bar. [mm]

    Returns
    -------
    Eccentricity e at worst. [mm]

    Valid for
    ---------
    All 0 or more.

    Source
    ------
    Geometry, derived.

    >>> round(collar_eccentricity(0.10, 0.10, 0.025), 4)
    0.125
    """
    at_least(diametral_clearance_mm, 0, "diametral clearance", "mm")
    at_least(centre_eccentricity_mm, 0, "eccentricity of the centre holes", "mm")
    return eccentricity(bore_run_out_mm) + diametral_clearance_mm / 2 + centre_eccentricity_mm


def cleanup_stock(eccentricity_mm: float, least_depth_mm: float) -> float:
    """Stock on diameter that is needed so that eccentric work cleans up all round.

    s = 2 e + 2 a

    Parameters
    ----------
    eccentricity_mm : Eccentricity e. [mm]
    least_depth_mm : Least depth a per side that still cuts a clean chip. [mm]

    Returns
    -------
    Stock s on the diameter. [mm]

    Valid for
    ---------
    Eccentricity 0 or more, depth more than 0.

    Source
    ------
    Geometry, derived.

    >>> round(cleanup_stock(0.125, 0.10), 4)
    0.45
    """
    at_least(eccentricity_mm, 0, "eccentricity", "mm")
    positive(least_depth_mm, "least depth per side", "mm")
    return 2 * eccentricity_mm + 2 * least_depth_mm


def copied_eccentricity(eccentricity_mm: float, cut_n_per_mm: float, machine_n_per_mm: float, passes: int) -> float:
    """Eccentricity that is left after some passes, because an uneven cut pushes unevenly.

    e_n = e (C / (1 + C))^n, C = k_cut / k_machine

    Parameters
    ----------
    eccentricity_mm : Eccentricity e before. [mm]
    cut_n_per_mm : Radial force of the cut for each millimetre of its depth. [N/mm]
    machine_n_per_mm : Stiffness of bar, centres, tool and lathe together. [N/mm]
    passes : Whole passes n. [1]

    Returns
    -------
    Eccentricity e_n of the cut surface. [mm]

    Valid for
    ---------
    As `share_left`; whole passes, 1 or more.

    Source
    ------
    Spring against spring, derived.

    >>> round(copied_eccentricity(0.125, 62, 10000, 1), 5)
    0.00077
    """
    at_least(eccentricity_mm, 0, "eccentricity", "mm")
    left = share_left(cut_n_per_mm, machine_n_per_mm)
    at_least(passes, 1, "number of passes")
    if passes != int(passes):
        raise OutOfRange(f"number of passes is {passes:g}; it must be a whole number")
    return float(eccentricity_mm * left**passes)
