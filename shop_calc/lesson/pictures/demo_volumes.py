"""Pictures of volumes, to look at. All numbers here are invented."""

from shop_calc.lesson.pictures.face_shares import FaceShare, FaceShares
from shop_calc.lesson.pictures.one_mix import OneMix, OneMixInVessels

SHARES = (
    FaceShare(1, 1, 1.524, 0.381, 3.81, 0.167, 0.035),
    FaceShare(4, 1, 0.381, 0.381, 6.096, 0.167, 0.055),
    FaceShare(8, 2, 0.1905, 0.1905, 12.192, 0.167, 0.107),
)
MIX = OneMix(0.0172, 0.0056, 0.0045, 0.0186, 0.0177)

VOLUMES = {
    "the share of face": lambda: FaceShares(SHARES, "One top, cut up (invented)"),
    "one mix in vessels": lambda: OneMixInVessels(MIX, "One mix, two layers (invented)"),
}
VOLUMES_UPDATES = {"the share of face": lambda: SHARES, "one mix in vessels": lambda: MIX}
