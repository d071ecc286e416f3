using System.Collections.Concurrent;
using PdfSharp.Fonts;

namespace Studio.Papers;

/// <summary>
/// Feeds PDFsharp the faces that travel inside the program; without a resolver it finds no font on Linux.
/// Sans is for work; serif is for headings and for everything the family sees.
/// </summary>
public sealed class PaperFonts : IFontResolver
{
    public const string Sans = "Source Sans 3";
    public const string Serif = "Source Serif 4";

    private static readonly ConcurrentDictionary<string, byte[]> Faces = new(StringComparer.Ordinal);
    private static readonly Lazy<bool> Installed = new(static () =>
    {
        GlobalFontSettings.FontResolver ??= new PaperFonts();
        return true;
    });

    /// <summary>Must have run before the first font is made; may run any number of times, from any thread.</summary>
    public static void Install() => _ = Installed.Value;

    public FontResolverInfo? ResolveTypeface(string familyName, bool bold, bool italic)
    {
        var serif = string.Equals(familyName, Serif, StringComparison.OrdinalIgnoreCase);
        return new((serif, bold, italic) switch
        {
            (true, true, _) => "SourceSerif4-SemiBold",
            (true, false, true) => "SourceSerif4-Italic",
            (true, false, false) => "SourceSerif4-Regular",
            (false, true, _) => "SourceSans3-SemiBold",
            _ => "SourceSans3-Regular",
        });
    }

    public byte[]? GetFont(string faceName) => Faces.GetOrAdd(faceName, static name =>
    {
        using var face = typeof(PaperFonts).Assembly.GetManifestResourceStream(name + ".ttf")
            ?? throw new InvalidOperationException($"The font {name}.ttf is missing from the program: build it again from a whole checkout.");
        using var memory = new MemoryStream();
        face.CopyTo(memory);
        return PaperGlyphs.Flatten(memory.ToArray());
    });
}
