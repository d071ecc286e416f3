using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Studio.Climate;
using Studio.Clock;
using Studio.Data;
using Studio.Engine.Fit;

namespace Studio.Calibration;

/// <summary>What was observed of one poured layer while it cured: a thermometer's readings, and when it had gelled and could be demoulded.</summary>
public sealed class CuringLog : IVersioned
{
    public int Id { get; set; }

    public int PourId { get; set; }

    /// <summary>Where the thermometer was, as the engine knows it.</summary>
    public LogPlace Place { get; set; }

    /// <summary>For a height of its own [mm] from the mould's lowest inner point.</summary>
    public double? HeightMm { get; set; }

    /// <summary>As typed, pasted or sent; in time's order.</summary>
    public List<LogReading> Readings { get; set; } = [];

    /// <summary>The sensor whose readings are taken, where one lies in the layer.</summary>
    public int? SensorId { get; set; }

    /// <summary>When its surface had gelled [UTC].</summary>
    public DateTime? GelAt { get; set; }

    /// <summary>When it was first seen to be firm enough [UTC].</summary>
    public DateTime? FirmAt { get; set; }

    public string Notes { get; set; } = "";

    public DateTime At { get; set; }

    public string By { get; set; } = "";

    public int Version { get; set; }

    private sealed class Table : IEntityTypeConfiguration<CuringLog>
    {
        public void Configure(EntityTypeBuilder<CuringLog> builder)
        {
            builder.HasIndex(l => l.PourId);
            builder.Property(l => l.Readings).AsJson();
            builder.HasOne<Pour>().WithMany().HasForeignKey(l => l.PourId).OnDelete(DeleteBehavior.Restrict);
            builder.HasOne<Sensor>().WithMany().HasForeignKey(l => l.SensorId).OnDelete(DeleteBehavior.Restrict);
        }
    }
}
