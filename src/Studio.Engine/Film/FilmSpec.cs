namespace Studio.Engine.Film;

/// <summary>How a sheet may stand in a piece.</summary>
public static class FilmPlacement
{
    /// <summary>Upright through the middle and two opposite corners; any diameter of a round mould.</summary>
    public const string Corner = "corner";

    /// <summary>Upright and parallel to a face.</summary>
    public const string Parallel = "parallel";

    /// <summary>Lying at one height.</summary>
    public const string Flat = "flat";

    /// <summary>At any angle in plan and any lean.</summary>
    public const string Free = "free";

    /// <summary>Every placement in the order a form offers them.</summary>
    public static IReadOnlyList<(string Key, string Label)> All { get; } =
        [(Corner, "Corner to corner"), (Parallel, "Parallel to a face"), (Flat, "Flat, on a layer"), (Free, "At an angle of its own")];
}

/// <summary>Where a sheet stands in a mould as it stands for casting. Lengths [mm], angles [degrees].</summary>
public sealed record FilmSpec
{
    /// <summary>A key of <see cref="FilmPlacement"/>.</summary>
    public string Placement { get; init; } = FilmPlacement.Corner;

    /// <summary>
    /// Turned in plan, anticlockwise seen from above; 0 looks to the front. Corner to corner: null takes the first diagonal, and on an even
    /// number of sides the nearest diagonal is taken.
    /// </summary>
    public double? TurnDegrees { get; init; }

    /// <summary>Parallel: how far from <see cref="DepthFrom"/>; from the centre forwards, from the front inwards [mm].</summary>
    public double DepthMm { get; init; }

    /// <summary>Parallel: <c>centre</c> or <c>front</c>, the foremost point of the face.</summary>
    public string DepthFrom { get; init; } = "centre";

    /// <summary>Flat: the height it lies at [mm].</summary>
    public double HeightMm { get; init; }

    /// <summary>Free: the top leans back by so much from upright, −89 to 89 [degrees].</summary>
    public double LeanDegrees { get; init; }

    /// <summary>Free: forwards of the centre, at half the mould's height [mm].</summary>
    public double OffsetMm { get; init; }

    /// <summary>Lowest height of the sheet [mm].</summary>
    public double FromMm { get; init; }

    /// <summary>Highest height of the sheet [mm]; null for the rim.</summary>
    public double? ToMm { get; init; }

    /// <summary>Kept free to the wall, so that the sheet goes in [mm]; 0 to 50.</summary>
    public double MarginMm { get; init; } = 0.5;

    /// <summary>Strip above the open side to hold the sheet by, cut away later [mm]; 0 for none. 10 is common practice, no source.</summary>
    public double TabMm { get; init; } = 10;

    /// <summary>A key of <see cref="FilmInks"/>.</summary>
    public string Ink { get; init; } = FilmInks.Toner;

    /// <summary>The piece will stand the other way up than it is cast, so the picture is set in upside down.</summary>
    public bool Over { get; init; }
}

/// <summary>What else is in the mould.</summary>
/// <param name="Former">The upright box that keeps room for lights; null for none.</param>
/// <param name="LayerTopsMm">Heights on which a sheet can stand or lie, because a layer ends there [mm].</param>
public sealed record FilmSurroundings(FilmFormer? Former, IReadOnlyList<double> LayerTopsMm)
{
    /// <summary>An empty mould.</summary>
    public static FilmSurroundings Nothing { get; } = new(null, []);
}

/// <summary>A centred upright box from a height to the rim [mm].</summary>
public sealed record FilmFormer(double WidthMm, double DepthMm, double FromMm);
