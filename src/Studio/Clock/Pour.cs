using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Studio.Data;
using Studio.Engine.Cure;
using Studio.Pieces;
using Studio.Resins;

namespace Studio.Clock;

/// <summary>A layer that was poured: what was computed, what was weighed, and when. Its numbers are kept as they were.</summary>
public sealed class Pour : IVersioned
{
    public int Id { get; set; }

    public int PieceId { get; set; }

    public int LayerId { get; set; }

    public int LayerOrder { get; set; }

    public string LayerName { get; set; } = "";

    public int ResinId { get; set; }

    public string ResinName { get; set; } = "";

    public string ResinLot { get; set; } = "";

    public string Colour { get; set; } = "";

    public double FromMm { get; set; }

    public double ToMm { get; set; }

    public double PlannedAG { get; set; }

    public double PlannedBG { get; set; }

    public double ActualAG { get; set; }

    public double ActualBG { get; set; }

    public int Batches { get; set; } = 1;

    /// <summary>The scale's readings as they were typed.</summary>
    public List<ScaleReading> Tally { get; set; } = [];

    /// <summary>Room temperature noted at the start [°C].</summary>
    public double? RoomC { get; set; }

    public DateTime StartedAt { get; set; }

    public string By { get; set; } = "";

    /// <summary>The data sheet's times as they stood at the pour: a later edit of the resin never makes an old clock earlier than these; a gel waits for the slow ones of what is known today (decision 022).</summary>
    public CureSheet Sheet { get; set; } = new() { Times = [] };

    /// <summary>How its resin's lot was taken to cure at the pour; null where nothing but the sheet was known. A later refit changes nothing of this.</summary>
    public Kinetics? Kinetics { get; set; }

    /// <summary>What was foretold of its heat when it was poured; null where it could not be. Kept as it was made.</summary>
    public PourForetold? Foretold { get; set; }

    /// <summary>Taken back by a correction; kept, and no longer counted.</summary>
    public bool Withdrawn { get; set; }

    public string SubmitKey { get; set; } = "";

    public int Version { get; set; }

    /// <summary>How a line of the commission's story names it.</summary>
    public string About => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"pour/{Id}");

    private sealed class Table : IEntityTypeConfiguration<Pour>
    {
        public void Configure(EntityTypeBuilder<Pour> builder)
        {
            builder.HasIndex(p => p.PieceId); // the shelf reads every pour of the pieces in the making
            builder.HasIndex(p => p.SubmitKey).IsUnique();
            builder.Ignore(p => p.About);
            builder.Property(p => p.Tally).AsJson();
            builder.Property(p => p.Sheet).AsJson();
            builder.Property(p => p.Kinetics).AsJson();
            builder.Property(p => p.Foretold).AsJson();
            builder.HasOne<Piece>().WithMany().HasForeignKey(p => p.PieceId).OnDelete(DeleteBehavior.Restrict);
            builder.HasOne<Resin>().WithMany().HasForeignKey(p => p.ResinId).OnDelete(DeleteBehavior.Restrict);
        }
    }
}

/// <summary>One reading of the scale while weighing.</summary>
/// <param name="Batch">From 1.</param>
/// <param name="Part"><c>A</c> or <c>B</c>.</param>
/// <param name="Grams">What was added [g].</param>
public sealed record ScaleReading(int Batch, string Part, double Grams);

/// <summary>A pour's entry set right: what it said, what it says, and why.</summary>
public sealed class PourCorrection
{
    public int Id { get; set; }

    public int PourId { get; set; }

    public DateTime At { get; set; }

    public string By { get; set; } = "";

    public string Field { get; set; } = "";

    public string Was { get; set; } = "";

    public string Now { get; set; } = "";

    public string Why { get; set; } = "";

    /// <summary>True for a stop that was passed with a reason when it was poured; its code is the field, its sentence what it was.</summary>
    public bool Passed { get; set; }

    private sealed class Table : IEntityTypeConfiguration<PourCorrection>
    {
        public void Configure(EntityTypeBuilder<PourCorrection> builder)
        {
            builder.HasIndex(c => c.PourId);
            builder.HasOne<Pour>().WithMany().HasForeignKey(c => c.PourId).OnDelete(DeleteBehavior.Restrict);
        }
    }
}

/// <summary>A prediction of one layer's heat as it was made at its pour.</summary>
public sealed record PourForetold
{
    /// <summary>What was known of the resin then: a <see cref="KnownCure"/>; 0 where its sheet was fitted and nobody had looked at the fit.</summary>
    public required int KnownCureId { get; init; }

    /// <summary>Which model gave it, in words.</summary>
    public required string Model { get; init; }

    /// <summary>Room that it was made for [°C].</summary>
    public required double RoomC { get; init; }

    /// <summary>Most probable peak [°C].</summary>
    public required double PeakC { get; init; }

    /// <summary>5 % [°C].</summary>
    public required double PeakLowC { get; init; }

    /// <summary>95 % [°C].</summary>
    public required double PeakHighC { get; init; }

    /// <summary>[h after the pour].</summary>
    public required double PeakAfterHours { get; init; }

    /// <summary>Highest temperature at the mould's face [°C].</summary>
    public required double FaceC { get; init; }

    /// <summary>When the whole layer had gelled [h after the pour]; null when not within the run.</summary>
    public double? GelAfterHours { get; init; }

    /// <summary>The same at its upper bound, the run's own error added [h after the pour]; null where it is not known.</summary>
    public double? GelLateHours { get; init; }

    /// <summary>When a thin layer of it would have gelled at the latest, in the room of that run [h after the pour].</summary>
    public double? FilmLateHours { get; init; }

    /// <summary>Hottest place over time.</summary>
    public IReadOnlyList<ForetoldMoment> Curve { get; init; } = [];
}

/// <summary>A moment of a foretold curve.</summary>
/// <param name="AfterHours">[h after the pour].</param>
/// <param name="Celsius">Hottest place [°C].</param>
public sealed record ForetoldMoment(double AfterHours, double Celsius);
