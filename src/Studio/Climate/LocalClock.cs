namespace Studio.Climate;

/// <summary>Turns what a sensor says of the time into an instant.</summary>
internal static class LocalClock
{
    /// <summary>When a message was measured [UTC]: as it says; on the studio's clock where it names no zone; else when it came in.</summary>
    internal static DateTime Measured(SensorMessage message, DateTime received, TimeZoneInfo zone) =>
        message.At ?? (message.LocalAt is { } local ? Utc(local, received, zone) : received);

    /// <summary>
    /// An instant from a time of day. In the hour that comes twice when summer time ends, the one that had not yet to come when it was received;
    /// in the hour that is skipped when it begins, as far after the change as the time says.
    /// </summary>
    internal static DateTime Utc(DateTime local, DateTime received, TimeZoneInfo zone)
    {
        local = DateTime.SpecifyKind(local, DateTimeKind.Unspecified);
        if (zone.IsAmbiguousTime(local))
        {
            var both = zone.GetAmbiguousTimeOffsets(local).Select(o => new DateTimeOffset(local, o).UtcDateTime).Order().ToList();
            return both.FindLast(t => t <= received.AddMinutes(ReadingDoubts.AheadMinutes)) is var found && found != default ? found : both[0];
        }

        return zone.IsInvalidTime(local) ? new DateTimeOffset(local, zone.GetUtcOffset(local.AddHours(-3))).UtcDateTime : TimeZoneInfo.ConvertTimeToUtc(local, zone);
    }
}
