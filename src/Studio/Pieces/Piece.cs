using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Studio.Commissions;
using Studio.Data;
using Studio.Engine.Layers;
using Studio.Moulds;
using Studio.Resins;

namespace Studio.Pieces;

/// <summary>One casting: its mould and its layers.</summary>
public sealed class Piece : IVersioned
{
    public int Id { get; set; }

    public int CommissionId { get; set; }

    public Commission? Commission { get; set; }

    public string Name { get; set; } = "";

    public int MouldId { get; set; }

    public Mould? Mould { get; set; }

    public FormerSpec? Former { get; set; }

    /// <summary>Lights and other things bought that the piece needs: material and how many.</summary>
    public List<PieceFitting> Fittings { get; set; } = [];

    /// <summary>Hand work beyond pouring, for the price.</summary>
    public List<PieceTask> Tasks { get; set; } = [];

    /// <summary>Photographs on film and where they stand in the piece.</summary>
    public List<PieceFilm> Sheets { get; set; } = [];

    /// <summary>What is cut for the room for lights; null where nothing was said.</summary>
    public PieceParts? Parts { get; set; }

    /// <summary>The room it is planned for; null: the room as it was last read.</summary>
    public PieceRoomPlan? RoomPlan { get; set; }

    /// <summary>The place it cures in; empty for the casting room.</summary>
    public string StandsIn { get; set; } = "";

    /// <summary>The pressure pot it is to cure in; null: none. No foreign key: SQLite would rebuild the table for it outside a transaction, and pots are never deleted.</summary>
    public int? PotId { get; set; }

    public double WastePercent { get; set; }

    public double WastePerBatchG { get; set; }

    /// <summary>A key of <see cref="Making"/>.</summary>
    public string Stage { get; set; } = Making.Drawn;

    /// <summary>What the clock last announced, so that it announces each change once.</summary>
    public string ClockSaid { get; set; } = "";

    public DateTime? ClockSaidAt { get; set; }

    public DateTime? DemouldedAt { get; set; }

    public DateTime? FinishedAt { get; set; }

    /// <summary>Why it failed: a key of <see cref="Failing"/>; empty for one that did not.</summary>
    public string FailedAs { get; set; } = "";

    /// <summary>What was seen, in the maker's words.</summary>
    public string FailedWords { get; set; } = "";

    /// <summary>What it cost, in the studio's money; null where nobody said.</summary>
    public decimal? FailedCost { get; set; }

    public DateTime? FailedAt { get; set; }

    /// <summary>The piece that failed and that this one is made in place of; null for none. No foreign key, as with the pot.</summary>
    public int? InPlaceOf { get; set; }

    public string Notes { get; set; } = "";

    public DateTime CreatedAt { get; set; }

    public int Version { get; set; }

    public List<PieceLayer> Layers { get; set; } = [];

    /// <summary>How far the making has come by its own record, where its stage says something else: for one that is taken up again, or did not fail after all.</summary>
    /// <param name="poured">True when at least one layer is.</param>
    public string StageByRecord(bool poured) => this switch
    {
        { FinishedAt: not null } => Making.Finished,
        { DemouldedAt: not null } => Making.Demoulded,
        _ => poured ? Making.Casting : Making.Drawn,
    };

    private sealed class Table : IEntityTypeConfiguration<Piece>
    {
        public void Configure(EntityTypeBuilder<Piece> builder)
        {
            builder.HasIndex(p => p.CommissionId);
            builder.HasIndex(p => p.Stage); // the shelf asks for pieces in the making
            builder.Property(p => p.Former).AsJson();
            builder.Property(p => p.Fittings).AsJson();
            builder.Property(p => p.Tasks).AsJson();
            builder.Property(p => p.Sheets).AsJson();
            builder.Property(p => p.Parts).AsJson();
            builder.Property(p => p.RoomPlan).AsJson();
            builder.HasOne(p => p.Commission).WithMany().HasForeignKey(p => p.CommissionId).OnDelete(DeleteBehavior.Restrict);
            builder.HasOne(p => p.Mould).WithMany().HasForeignKey(p => p.MouldId).OnDelete(DeleteBehavior.Restrict);
            builder.HasMany(p => p.Layers).WithOne().HasForeignKey(l => l.PieceId).OnDelete(DeleteBehavior.Cascade);
        }
    }
}

/// <summary>One layer of a piece's design, counted from the bottom of the mould as it stands for casting.</summary>
public sealed class PieceLayer
{
    public int Id { get; set; }

    public int PieceId { get; set; }

    /// <summary>From 0, in pouring order.</summary>
    public int Order { get; set; }

    public string Name { get; set; } = "";

    public int ResinId { get; set; }

    public Resin? Resin { get; set; }

    public double? ToMm { get; set; }

    public double? ThicknessMm { get; set; }

    public double? ResinMl { get; set; }

    /// <summary>Planned wait after the pour below [h]; null: as soon as the next-pour window opens.</summary>
    public double? WaitHours { get; set; }

    /// <summary>How it is drawn: <c>#rrggbb</c>.</summary>
    public string Colour { get; set; } = "#cfd8d6";

    public List<LayerAddition> Additions { get; set; } = [];

    public List<LayerScatter> Scatter { get; set; } = [];

    public List<LayerPlaced> Placed { get; set; } = [];

    private sealed class Table : IEntityTypeConfiguration<PieceLayer>
    {
        public void Configure(EntityTypeBuilder<PieceLayer> builder)
        {
            builder.HasIndex(l => l.PieceId);
            builder.Property(l => l.Additions).AsJson();
            builder.Property(l => l.Scatter).AsJson();
            builder.Property(l => l.Placed).AsJson();
            builder.HasOne(l => l.Resin).WithMany().HasForeignKey(l => l.ResinId).OnDelete(DeleteBehavior.Restrict);
        }
    }
}

public sealed record LayerAddition(int? MaterialId, string Name, double PercentOfResin, double DensityGPerMl);

public sealed record LayerScatter(int? MaterialId, string Name, double? MassG, double? DensityGPerMl, double? BulkMl, double? PackingFraction);

public sealed record LayerPlaced(int? KeepsakeId, string Name, double? MassG, double? DensityGPerMl, double? DisplacedMl)
{
    /// <summary>The keepsake that this is a copy of; null where it is none.</summary>
    public int? CopyOf { get; init; }
}

/// <summary>A bought thing fitted to the piece, such as a light string.</summary>
public sealed record PieceFitting(int? MaterialId, string Name, double Count);

/// <summary>Hand work: what, and how many minutes.</summary>
public sealed record PieceTask(string Name, double Minutes)
{
    /// <summary>True where it is the weighing, stirring and pouring itself, which the price then does not add a second time; null where nobody was asked.</summary>
    public bool? Pours { get; init; }
}

/// <summary>How far the making of a piece has come. What the clock says on top is computed, never stored as truth.</summary>
public static class Making
{
    public const string Drawn = "drawn";
    public const string Casting = "casting";
    public const string Demoulded = "demoulded";
    public const string Finished = "finished";
    public const string Home = "home";
    public const string LetGo = "let-go";
    public const string Failed = "failed";

    public static IReadOnlyList<(string Key, string Label)> All { get; } =
    [
        (Drawn, "Drawn, not yet poured"),
        (Casting, "In the mould"),
        (Demoulded, "Out of the mould"),
        (Finished, "Finished"),
        (Home, "Home"),
        (LetGo, "Let go"),
        (Failed, "Failed"),
    ];

    public static string Label(string key) => All.FirstOrDefault(s => s.Key == key).Label ?? key;
}

/// <summary>Why a piece failed.</summary>
public static class Failing
{
    /// <summary>None of the others: it is described.</summary>
    public const string Other = "other";

    /// <summary>Key and what it is called.</summary>
    public static IReadOnlyList<(string Key, string Label)> All { get; } =
    [
        ("bubbles", "Bubbles"),
        ("overheated", "Overheated"),
        ("stuck", "Stuck to the mould"),
        ("not-level", "Not level"),
        ("film-moved", "The film moved"),
        (Other, "Something else"),
    ];

    /// <summary>What a reason is called; a key that nobody knows is said to be unknown.</summary>
    public static string Label(string key) => All.FirstOrDefault(f => f.Key == key).Label ?? $"A reason that is not known (“{key}”)";
}

/// <summary>The room a piece is planned for.</summary>
/// <param name="DayC">By day [°C].</param>
/// <param name="NightC">By night, 22:00 to 06:00 [°C]; null: as by day.</param>
/// <param name="PouredC">Of the mixed resin [°C]; null: as the room.</param>
public sealed record PieceRoomPlan(double? DayC, double? NightC = null, double? PouredC = null);
