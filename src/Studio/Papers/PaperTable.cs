namespace Studio.Papers;

/// <summary>A column: its heading, its share of the width, and whether its numbers stand on the right.</summary>
internal sealed record PaperColumn(string Heading, double Share, bool Right = false);

/// <summary>A cell: paragraphs one below the other, and a photograph above them where there is one.</summary>
internal sealed record PaperCell(IReadOnlyList<(string Text, PaperStyle Style)> Paragraphs)
{
    public byte[]? Jpeg { get; init; }

    /// <summary>What the photograph shows.</summary>
    public string Alt { get; init; } = "";

    /// <summary>An empty square to tick stands in the cell [pt]; 0 for none.</summary>
    public double Tick { get; init; }

    public static PaperCell Of(string text, PaperStyle style) => new([(text, style)]);
}
