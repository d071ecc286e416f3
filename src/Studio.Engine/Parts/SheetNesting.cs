namespace Studio.Engine.Parts;

/// <summary>Lays rectangles on whole sheets in rows, as a saw cuts them: a kerf apart, the tallest row first.</summary>
public static class SheetNesting
{
    /// <summary>The best of a few orders: fewest sheets, then the least length begun.</summary>
    /// <param name="parts">Parts of one thickness.</param>
    /// <param name="widthMm">Width of a sheet [mm].</param>
    /// <param name="heightMm">Height of a sheet [mm].</param>
    /// <param name="kerfMm">Between neighbours [mm]; the sheet's own edges count as cut.</param>
    /// <param name="mayTurn">Parts may lie turned by a quarter.</param>
    public static SheetUse Lay(IReadOnlyList<SheetPart> parts, double widthMm, double heightMm, double kerfMm, bool mayTurn = true)
    {
        var (w, h) = (Require.Positive(widthMm, "mm"), Require.Positive(heightMm, "mm"));
        var fits = parts.Where(p => Lies(p, false, w, h) || (mayTurn && Lies(p, true, w, h))).ToList();
        var pieces = fits.SelectMany(p => Enumerable.Range(1, p.Count).Select(n => (Part: p, Number: n))).ToList();
        var best = (mayTurn ? new[] { Lying.Flat, Lying.Upright, Lying.AsDrawn } : [Lying.AsDrawn])
            .Select(lying => Rows(pieces, lying, w, h, kerfMm, mayTurn))
            .OrderBy(s => s.Count).ThenBy(s => s.Count == 0 ? 0 : s[^1].Top).First();
        var used = pieces.Sum(p => p.Part.WidthMm * p.Part.HeightMm);
        return new SheetUse(
            parts.Count > 0 ? parts[0].SheetMm : 0, w, h, [.. best.Select(s => s.Placed)], best.Count == 0 ? 0 : 100 * used / (best.Count * w * h), [.. parts.Except(fits)]);
    }

    private enum Lying
    {
        AsDrawn,
        Flat,
        Upright,
    }

    private static bool Lies(SheetPart part, bool turned, double width, double height)
    {
        var (w, h) = Size(part, turned);
        return w <= width + Rules.TouchMm && h <= height + Rules.TouchMm;
    }

    private static (double W, double H) Size(SheetPart part, bool turned) => turned ? (part.HeightMm, part.WidthMm) : (part.WidthMm, part.HeightMm);

    private static List<Sheet> Rows(List<(SheetPart Part, int Number)> pieces, Lying lying, double width, double height, double kerf, bool mayTurn)
    {
        var sheets = new List<Sheet>();
        foreach (var (part, number, turned) in pieces.Select(p => (p.Part, p.Number, Turned: Turn(p.Part, lying, width, height, mayTurn)))
            .OrderByDescending(p => Size(p.Part, p.Turned).H).ThenByDescending(p => Size(p.Part, p.Turned).W))
        {
            if (!sheets.Exists(s => s.Take(part, number, turned, kerf) || (mayTurn && s.Squeeze(part, number, !turned, kerf))))
            {
                var sheet = new Sheet(width, height);
                sheet.Take(part, number, turned, kerf);
                sheets.Add(sheet);
            }
        }

        return sheets;
    }

    private static bool Turn(SheetPart part, Lying lying, double width, double height, bool mayTurn)
    {
        var wanted = lying switch { Lying.Flat => part.HeightMm > part.WidthMm, Lying.Upright => part.WidthMm > part.HeightMm, _ => false };
        return mayTurn && !Lies(part, wanted, width, height) ? !wanted : wanted;
    }

    private sealed class Sheet(double width, double height)
    {
        private readonly List<Row> rows = [];

        public List<PlacedPart> Placed { get; } = [];

        /// <summary>Where the next row could begin.</summary>
        public double Top => rows.Count == 0 ? 0 : rows[^1].Bottom + rows[^1].Height;

        public bool Take(SheetPart part, int number, bool turned, double kerf)
        {
            if (Squeeze(part, number, turned, kerf))
            {
                return true;
            }

            var (w, h) = Size(part, turned);
            var bottom = rows.Count == 0 ? 0 : Top + kerf;
            if (w > width + Rules.TouchMm || bottom + h > height + Rules.TouchMm)
            {
                return false;
            }

            rows.Add(new Row(bottom, h));
            return Squeeze(part, number, turned, kerf);
        }

        /// <summary>Lays the part at the end of a row that is high enough.</summary>
        public bool Squeeze(SheetPart part, int number, bool turned, double kerf)
        {
            var (w, h) = Size(part, turned);
            if (rows.Find(r => h <= r.Height + Rules.TouchMm && r.Next(kerf) + w <= width + Rules.TouchMm) is not { } row)
            {
                return false;
            }

            Placed.Add(new PlacedPart(part, number, row.Next(kerf), row.Bottom, turned));
            row.End = row.Next(kerf) + w;
            return true;
        }
    }

    private sealed class Row(double bottom, double height)
    {
        public double Bottom => bottom;

        public double Height => height;

        public double? End { get; set; }

        public double Next(double kerf) => End is { } end ? end + kerf : 0;
    }
}
