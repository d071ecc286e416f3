namespace Studio.Engine.Parts;

/// <summary>Rules of the trade for cutting and holding.</summary>
internal static class Rules
{
    public const string Practice = "common practice, no source";
    public const string Geometry = "geometry of the piece";

    /// <summary>A cover that reaches less far beyond its opening falls in or shows a gap [mm].</summary>
    public const double LeastOverlapMm = 5;

    /// <summary>A hole's middle keeps this many of its diameters from any edge.</summary>
    public const double EdgeDiameters = 2;

    /// <summary>Sums of lengths that should be equal may differ by this [mm].</summary>
    public const double TouchMm = 1e-6;

    /// <summary>A length as the sentences say it.</summary>
    public static string Mm(double mm) => FormattableString.Invariant($"{Math.Round(mm, 1, MidpointRounding.AwayFromZero):0.#} mm");

    /// <summary>A shortage, never said as nought.</summary>
    public static string Short(double mm) => FormattableString.Invariant($"{Math.Max(0.1, Math.Ceiling((mm - TouchMm) * 10) / 10):0.#} mm");

    public static Finding Look(string code, string path, string message, string source) => new(code, Severity.Warn, path, message, source);

    public static Finding Note(string code, string path, string message, string source) => new(code, Severity.Note, path, message, source);
}
