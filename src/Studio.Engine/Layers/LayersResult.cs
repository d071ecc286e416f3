using System.Text.Json;
using System.Text.Json.Serialization;

namespace Studio.Engine.Layers;

/// <summary>Result of <c>calc layers</c>.</summary>
public sealed record LayersResult
{
    /// <summary>Volume of the empty mould to its rim [ml].</summary>
    public required double CapacityMl { get; init; }

    /// <summary>Resin, additions and everything of known mass; the former left out [g].</summary>
    public required double FinishedMassG { get; init; }

    /// <summary>Height of the centre of mass above the mould's lowest inner point [mm].</summary>
    public required double CentreOfMassMm { get; init; }

    public required IReadOnlyList<LayerResult> Layers { get; init; }

    /// <summary>Doubts about the resins' own figures; null where there is none.</summary>
    [JsonConverter(typeof(FindingsJson))]
    public IReadOnlyList<Finding>? Findings { get; init; }
}

/// <summary>One layer's volumes, grams, batches and warnings.</summary>
public sealed record LayerResult
{
    public required string Name { get; init; }

    public required double FromMm { get; init; }

    public required double ToMm { get; init; }

    public required double DepthMm { get; init; }

    /// <summary>Mould alone between the two heights [ml].</summary>
    public required double GrossMl { get; init; }

    /// <summary>Former, scatter and placed [ml].</summary>
    public required double DisplacedMl { get; init; }

    public required double ResinMl { get; init; }

    public required IReadOnlyList<AdditionResult> Additions { get; init; }

    /// <summary>Net resin [g].</summary>
    public required double ResinG { get; init; }

    /// <summary>To be mixed, waste included [g].</summary>
    public required double MixG { get; init; }

    /// <summary>How far <see cref="MixG"/> may be off by the mould's water check [g], to either side; null where there was none, or where the resin was given.</summary>
    public double? MixSpreadG { get; init; }

    /// <summary>Where the resin was given: how far the level may be off by the mould's water check [mm], to either side.</summary>
    public double? LevelSpreadMm { get; init; }

    public required double PartAG { get; init; }

    public required double PartBG { get; init; }

    public double? PartAMl { get; init; }

    public double? PartBMl { get; init; }

    public required IReadOnlyList<BatchResult> Batches { get; init; }

    /// <summary>From z = 0 to the layer's top along the middle of a face or the generator [mm].</summary>
    public required double FaceMarkMm { get; init; }

    /// <summary>Doubts of the trade about this layer; in JSON each as its code and message.</summary>
    [JsonConverter(typeof(WarningsJson))]
    public required IReadOnlyList<Finding> Warnings { get; init; }
}

public sealed record AdditionResult(string Name, double Grams);

public sealed record BatchResult(double PartAG, double PartBG);

/// <summary>Writes findings as the contract of <c>calc layers</c> wants its warnings: code and message, nothing else.</summary>
internal sealed class WarningsJson : JsonConverter<IReadOnlyList<Finding>>
{
    public override IReadOnlyList<Finding> Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw new NotSupportedException("Results are written, never read back.");

    public override void Write(Utf8JsonWriter writer, IReadOnlyList<Finding> value, JsonSerializerOptions options)
    {
        writer.WriteStartArray();
        foreach (var finding in value)
        {
            writer.WriteStartObject();
            writer.WriteString("code", finding.Code);
            writer.WriteString("message", finding.Message);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }
}

/// <summary>Writes findings as the other calculations write theirs: code, severity, path, message and source.</summary>
internal sealed class FindingsJson : JsonConverter<IReadOnlyList<Finding>>
{
    public override IReadOnlyList<Finding> Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw new NotSupportedException("Results are written, never read back.");

    public override void Write(Utf8JsonWriter writer, IReadOnlyList<Finding> value, JsonSerializerOptions options)
    {
        writer.WriteStartArray();
        foreach (var finding in value)
        {
            writer.WriteStartObject();
            writer.WriteString("code", finding.Code);
            writer.WriteString("severity", finding.Severity switch { Severity.Stop => "stop", Severity.Warn => "warn", _ => "note" });
            writer.WriteString("path", finding.Path);
            writer.WriteString("message", finding.Message);
            writer.WriteString("source", finding.Source);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }
}
