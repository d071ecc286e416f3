using System.Runtime.InteropServices;

namespace Studio.Engine.Custody;

/// <summary>An amount of a keepsake.</summary>
/// <param name="Count">Whole things [pieces], 0 or more; 0 with grams is a part by weight.</param>
/// <param name="MassG">[g]; null where nobody weighed it.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct CustodyAmount(int Count, double? MassG)
{
    /// <summary>Nothing at all.</summary>
    public static CustodyAmount Nothing { get; } = new(0, 0);
}

/// <summary>One entry of a keepsake's log, as the balance reads it.</summary>
/// <param name="Id">Its place in the log; entries are read by rising ids.</param>
/// <param name="Kind">A key of <see cref="CustodyKind"/>.</param>
public sealed record CustodyEntry(int Id, string Kind)
{
    /// <summary>Whole things [pieces]; null where the entry is not about an amount.</summary>
    public int? Count { get; init; }

    /// <summary>[g]; null where it was not weighed.</summary>
    public double? MassG { get; init; }

    /// <summary>The earlier entry that this one is about: what it takes out again, or takes back.</summary>
    public int? RefId { get; init; }

    /// <summary>The piece it went into; null where that is not known.</summary>
    public int? PieceId { get; init; }

    /// <summary>The layer of that piece.</summary>
    public int? LayerId { get; init; }

    /// <summary>The pour that holds it.</summary>
    public int? PourId { get; init; }

    /// <summary>Where it, or what is left of it, lies from then on; empty where that did not change.</summary>
    public string Place { get; init; } = "";
}
