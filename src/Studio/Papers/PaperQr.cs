using PdfSharp.Drawing;
using QRCoder;

namespace Studio.Papers;

/// <summary>QR symbols (ISO/IEC 18004), error correction level M: 15 % of the symbol may be lost.</summary>
internal static class PaperQr
{
    /// <summary>Modules of light ground that the standard wants around the symbol.</summary>
    public const int QuietModules = 4;

    /// <summary>The symbol's modules, row by row, without the quiet zone; true is dark.</summary>
    public static IReadOnlyList<IReadOnlyList<bool>> Modules(string text)
    {
        using var generator = new QRCodeGenerator();
        using var data = generator.CreateQrCode(text, QRCodeGenerator.ECCLevel.M);

        // the generator's matrix brings its own margin of four; ours is laid by the paper
        var inner = data.ModuleMatrix.Count - (2 * QuietModules);
        return [.. Enumerable.Range(QuietModules, inner).Select(r =>
            (IReadOnlyList<bool>)[.. Enumerable.Range(QuietModules, inner).Select(c => data.ModuleMatrix[r][c])])];
    }

    /// <summary>Dark runs of each row as rectangles within a square that includes the quiet zone.</summary>
    public static IEnumerable<XRect> Runs(string text, double x, double y, double side)
    {
        var modules = Modules(text);
        var unit = side / (modules.Count + (2 * QuietModules));
        for (var r = 0; r < modules.Count; r++)
        {
            for (var c = 0; c < modules.Count; c++)
            {
                var from = c;
                while (c < modules.Count && modules[r][c])
                {
                    c++;
                }

                if (c > from)
                {
                    yield return new XRect(x + ((QuietModules + from) * unit), y + ((QuietModules + r) * unit), (c - from) * unit, unit);
                }
            }
        }
    }
}
