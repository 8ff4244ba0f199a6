"""Sizes that stand in a sentence in both systems, brought down to one."""

import re

_NUMBER = r"-?\d[\d,]*(?:\.\d+)?"
_TAPE = r"-?(?:\d+'-\d+(?: \d+/\d+)?|\d+(?: \d+/\d+)?|\d+/\d+)\""
_US_UNITS = "lb/ft²·h|lb/ft²|lb/ft³|ft²/gal|fl oz|ft²|in²|ft³|in³|mph|psi|ksi|gal|qt|cup|mil|lb|oz|°F|in|ft|hp"
_SI_UNITS = "kg/m²·h|kg/m²|kg/m³|m²/L|MPa|kPa|Pa|km/h|m/s|mm|cm²|m²|m³|mL|µm|kg|kN|kW|°C|m|L|g|N|W"
_US = rf"(?:{_TAPE}|{_NUMBER} (?:{_US_UNITS}))"
_SI = rf"{_NUMBER} (?:{_SI_UNITS})"
_PAIRS = ((re.compile(rf"({_US}) \(({_SI})\)"), r"\1", r"\2"), (re.compile(rf"({_SI}) \(({_US})\)"), r"\2", r"\1"))


def one_system(text, system):
    """Keep one of the two readings of each size in a sentence.

    Not for a size that was written in one system only: it is left as it is.

    Parameters
    ----------
    text : str
        Words with sizes such as 1 1/2" (38.1 mm) or 21 °C (70 °F) [-].
    system : str
        us, si or both [-].

    Returns
    -------
    str
        The same words; with "both" the same text [-].

    Examples
    --------
    >>> words = 'Chill it to 41.3 °F (5.2 °C), 1\\'-2 1/4" (362 mm) deep, above 30 °C (86 °F).'
    >>> one_system(words, "us"), one_system(words, "si")
    ('Chill it to 41.3 °F, 1\\'-2 1/4" deep, above 86 °F.', 'Chill it to 5.2 °C, 362 mm deep, above 30 °C.')

    References
    ----------
    Common practice, no source.
    """
    for pair, us, si in _PAIRS if system in ("us", "si") else ():
        text = pair.sub(us if system == "us" else si, text)
    return text
