using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Studio.Data;

namespace Studio.Climate;

/// <summary>A thermometer that sends its readings by itself.</summary>
public sealed class Sensor : IVersioned
{
    public int Id { get; set; }

    public string Name { get; set; } = "";

    /// <summary>Where it stands; its readings count for what stands there. Empty for a probe that is put into layers.</summary>
    public string Place { get; set; } = "";

    /// <summary><c>post</c> (it calls the studio) or <c>mqtt</c> (the studio listens at the maker's broker).</summary>
    public string Way { get; set; } = "post";

    /// <summary>SHA-256 of its token in hexadecimal; the token itself is shown once and not kept. Null for <c>mqtt</c>.</summary>
    public string? TokenHash { get; set; }

    /// <summary>For <c>mqtt</c>: the topic it publishes to.</summary>
    public string Topic { get; set; } = "";

    /// <summary>For <c>mqtt</c>: the field of a JSON message that holds the temperature; empty when the message is the number itself.</summary>
    public string CelsiusField { get; set; } = "";

    /// <summary>For <c>mqtt</c>: the field that holds relative humidity; empty when there is none.</summary>
    public string HumidityField { get; set; } = "";

    /// <summary><c>C</c> or <c>F</c>: what it sends.</summary>
    public string Unit { get; set; } = "C";

    /// <summary>Added to every reading [K]: what a comparison with a better thermometer showed.</summary>
    public double CorrectionK { get; set; }

    /// <summary>How often it should be heard [min].</summary>
    public double EveryMinutes { get; set; } = 10;

    public DateTime MadeAt { get; set; }

    /// <summary>Its token no longer counts from here on [UTC]; its readings stay.</summary>
    public DateTime? RemovedAt { get; set; }

    /// <summary>When it was last heard, whatever it said [UTC].</summary>
    public DateTime? HeardAt { get; set; }

    /// <summary>Why its last message was not counted; empty when it was.</summary>
    public string LastRefusal { get; set; } = "";

    public int Version { get; set; }

    private sealed class Table : IEntityTypeConfiguration<Sensor>
    {
        public void Configure(EntityTypeBuilder<Sensor> builder) => builder.HasIndex(s => s.TokenHash).IsUnique();
    }
}
