"""The heat balance of a mortar, ready to be asked for many waters."""

from shop_calc.science import cooling, heat_balance


class MixHeat:
    """The heat balance of the mortar of one kilogram of basis, its parts put in order once.

    Parameters
    ----------
    mix : Mix
        The mix [-].
    at : Temps
        Temperatures of what goes in [°C].
    stone_follows : bool
        False for a load that becomes face alone: nothing is held out of its water for wet stone [-].

    Notes
    -----
    The solids of a liquid are as warm as the liquid. Water that wet stone brings is held out of the mixing water,
    see weigh.weigh_load, so that it cannot chill the mortar.

    Examples
    --------
    >>> from shop_calc.trade.mortar.mix import build_mix
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> from shop_calc.trade.batching.water import temps
    >>> f"{MixHeat(build_mix(recipe('demo mortar')), temps(21.111)).mix_c(5.0000):.4f}"
    '15.4885'

    References
    ----------
    From memory of ACI 305R, temperature of freshly mixed concrete.
    """

    def __init__(self, mix, at, *, stone_follows=True):
        sand = [line for line in mix.lines if line.kind == "aggregate"]
        rest = [line for line in mix.lines if line.kind != "aggregate"]
        self.mix = mix
        self.solids = [sum(line.dry_kg for line in rest), sum(line.dry_kg for line in sand)]
        in_liquids = sum(line.dry_kg for line in rest if line.water_kg > 0)
        warmer_k = in_liquids / self.solids[0] * (at.liquids_c - at.powder_c) if self.solids[0] > 0 else 0.0
        self.solid_temps = [at.powder_c + warmer_k, at.sand_c]
        self.others = [sum(line.water_kg for line in rest), sum(line.water_kg for line in sand)]
        self.other_temps = [at.liquids_c, max(at.sand_c, 0.0)]
        held_out_kg = max(-mix.stone_water_kg, 0.0) if stone_follows else 0.0
        self.added_kg = mix.added_water_kg - held_out_kg
        self.capacity_kg = float(heat_balance.water_equivalent_kg(self.solids, [self.added_kg, *self.others]))
        # heat above 0 °C of everything but the added water, in kilograms of water times kelvin
        share = heat_balance.SOLID_SPECIFIC_HEAT
        self.other_heat = share * sum(m * t for m, t in zip(self.solids, self.solid_temps, strict=True))
        self.other_heat += sum(m * t for m, t in zip(self.others, self.other_temps, strict=True))

    def mix_c(self, water_c, ice_share=0.0):
        """Temperature of the mortar; 0 where the ice would be more than the rest can melt."""
        ice = self.added_kg * ice_share
        try:
            return float(
                heat_balance.mix_temp_c(
                    self.solids,
                    self.solid_temps,
                    [self.added_kg - ice, *self.others],
                    [water_c, *self.other_temps],
                    ice,
                )
            )
        except ValueError:
            if ice > 0:
                return 0.0
            raise

    def water_for_c(self, wanted):
        """Temperature that the added water needs."""
        if self.added_kg <= 0:
            return wanted
        return float(
            cooling.water_temperature_for_c(
                wanted, self.solids, self.solid_temps, self.added_kg, self.others, self.other_temps
            )
        )

    def ice_share(self, wanted, water_c):
        """Share of the added water to put in as ice; above 1 when even all of it is not enough."""
        try:
            ice = cooling.ice_for_kg(
                wanted, self.solids, self.solid_temps, self.added_kg, water_c, self.others, self.other_temps
            )
        except ValueError:
            return 2.0
        return float(ice) / self.added_kg

    def base_c(self, mortar_c, at):
        """Temperature after coarse sand and stone are in; their own water comes from the tap."""
        lines, mix = self.mix.base_lines, self.mix
        if not lines:
            return mortar_c
        dry = sum(line.dry_kg for line in lines)
        moisture = sum(line.water_kg for line in lines)
        return float(
            heat_balance.mix_temp_c(
                [dry],
                [at.stone_c],
                [self.capacity_kg, moisture, max(mix.stone_water_kg, 0.0)],
                [mortar_c, max(at.stone_c, 0.0), at.tap_water_c],
            )
        )

    def base_follows(self):
        """Degrees of the base for one degree of mortar: the share of the mortar in the heat capacity of both."""
        lines, mix = self.mix.base_lines, self.mix
        dry, moisture = sum(line.dry_kg for line in lines), sum(line.water_kg for line in lines)
        both = heat_balance.water_equivalent_kg([dry], [self.capacity_kg, moisture, max(mix.stone_water_kg, 0.0)])
        return self.capacity_kg / float(both)

    def degrees_for_one(self):
        """Degrees of powder, sand and water for one degree of mortar."""
        share = heat_balance.SOLID_SPECIFIC_HEAT
        parts = (
            ("powder", self.solids[0] * share),
            ("sand", self.solids[1] * share),
            ("water", self.added_kg),
        )
        return tuple((name, self.capacity_kg / heat) for name, heat in parts if heat > 0)
