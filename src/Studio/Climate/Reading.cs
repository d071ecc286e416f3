using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Studio.Climate;

/// <summary>Temperature and humidity of a place in the studio, as somebody read it or a sensor sent it.</summary>
public sealed class Reading
{
    public int Id { get; set; }

    /// <summary>When it was measured [UTC].</summary>
    public DateTime At { get; set; }

    /// <summary>Where in the studio.</summary>
    public string Place { get; set; } = "";

    public double Celsius { get; set; }

    public double? HumidityPercent { get; set; }

    /// <summary>Who read it, or the sensor's name.</summary>
    public string By { get; set; } = "";

    /// <summary>Which sensor sent it; null when a person read it. No foreign key: SQLite would rebuild the table for it outside a transaction, and sensors are never deleted.</summary>
    public int? SensorId { get; set; }

    /// <summary>When it came in [UTC], where a sensor said another time of measuring; null otherwise.</summary>
    public DateTime? ReceivedAt { get; set; }

    /// <summary>Code of the doubt for which it is kept and not counted; empty when it counts.</summary>
    public string Doubt { get; set; } = "";

    /// <summary>Taken back as a slip; kept, and no longer counted.</summary>
    public bool Withdrawn { get; set; }

    private sealed class Table : IEntityTypeConfiguration<Reading>
    {
        public void Configure(EntityTypeBuilder<Reading> builder)
        {
            builder.HasIndex(r => r.At); // the room's page reads the last days of every place
            builder.HasIndex(r => new { r.Place, r.At }); // the clock reads one place from the first pour on, and its newest reading
            builder.HasIndex(r => new { r.SensorId, r.At }).IsUnique(); // a message that comes twice is one reading
        }
    }
}
