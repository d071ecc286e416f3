namespace Studio.Engine.Cure;

/// <summary>
/// Tells for each poured layer when it gels, takes the next pour, may be demoulded and is fully cured, from its data sheet's printed
/// hours and the room's temperature since the pour. Never earlier than the sheet or the calculation allows.
/// </summary>
/// <remarks>Rate of cure × factor per 10 °C, 2 by rule of thumb (frets.com ShopTips/166; common practice, 1.5 to 2.5 in reality).</remarks>
public static class CureClock
{
    /// <summary>Runs the clock.</summary>
    /// <param name="layers">Poured layers from the lowest up.</param>
    /// <param name="room">Readings in any order; of two at one time the one later in the list counts. None: nothing is guessed.</param>
    /// <param name="untilHours">Milestones after this time [h] are reported as not reached; infinity for no limit.</param>
    /// <exception cref="ArgumentException">A reading, pour time or limit is not a number, or a sheet's figure is out of range.</exception>
    public static PieceCure Run(IReadOnlyList<PouredLayer> layers, IReadOnlyList<RoomReading> room, double untilHours) =>
        Run(layers, new RoomLog(room), untilHours);

    /// <summary>Runs the clock on a room made ready before, as for many pieces in one room.</summary>
    /// <exception cref="ArgumentException">A pour time or limit is not a number, or a sheet's figure is out of range.</exception>
    public static PieceCure Run(IReadOnlyList<PouredLayer> layers, RoomLog room, double untilHours)
    {
        CureCheck.Layers(layers, untilHours);
        var clocks = new List<LayerClock>();
        foreach (var layer in layers)
        {
            clocks.Add(new(layer, clocks.Count == 0 ? null : clocks[^1], clocks.Count, room.Curve, untilHours));
        }

        var cures = clocks.ConvertAll(c => c.Cure());
        return new(cures, SlowestDemould(cures), room.Findings);
    }

    private static Milestone SlowestDemould(List<LayerCure> cures)
    {
        if (cures.Count == 0)
        {
            return Milestone.Unknown("Nothing has been poured yet.");
        }

        var unknown = cures.FirstOrDefault(c => c.Demould.AtHours is null);
        return unknown is null
            ? cures.MaxBy(c => c.Demould.AtHours)!.Demould
            : Milestone.Unknown($"Layer {unknown.Name}: {unknown.Demould.Reason}");
    }
}
