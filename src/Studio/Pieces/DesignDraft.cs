using System.Text.Json;

namespace Studio.Pieces;

/// <summary>A design that is not kept yet, as the browser holds it against a lost connection.</summary>
/// <param name="At">When it was written down [UTC].</param>
/// <param name="From">The kept design it set out from.</param>
/// <param name="Design">The design.</param>
public sealed record DesignDraft(DateTime At, string From, string Design)
{
    public string Write() => JsonSerializer.Serialize(this);

    /// <summary>Null for anything that is no draft.</summary>
    public static DesignDraft? Read(string? text)
    {
        try
        {
            return string.IsNullOrWhiteSpace(text) ? null : JsonSerializer.Deserialize<DesignDraft>(text);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
