using Studio.Climate;
using Studio.Engine;
using Studio.Engine.Cure;
using Studio.Shell;

namespace Studio.Bench;

/// <summary>What the air's humidity says against a pour: blush.</summary>
internal static class DampRules
{
    /// <summary>What the air in the room says before anything is typed.</summary>
    internal static IReadOnlyList<Finding> OfRoom(BenchView sheet, BenchLayer layer) =>
        sheet.Room is { HumidityPercent: { } humid } air ? [.. Blush.Doubts(air.Celsius, humid, null, layer.Resin.MaxHumidityPercent)] : [];

    // the surface is as warm as the room that is typed, else as the air was when its humidity was read
    internal static IEnumerable<Finding> Of(BenchView sheet, BenchLayer layer, PourForm form)
    {
        if (sheet.Damp is not { HumidityPercent: { } humid } air)
        {
            return [];
        }

        var surface = form.RoomC is { } c && RoomBook.Wrong(c) is null ? c : air.Celsius;
        return Blush.Doubts(air.Celsius, humid, surface, layer.Resin.MaxHumidityPercent, "roomC")
            .Select(f => f with { Message = $"{f.Message} The humidity was read {Say.When(air.At, sheet.Zone, sheet.Now)}." });
    }
}
