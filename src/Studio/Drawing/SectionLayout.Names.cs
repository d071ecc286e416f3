using System.Globalization;

namespace Studio.Drawing;

/// <summary>Names beside the drawing, kept apart.</summary>
public sealed partial class SectionLayout
{
    private const double LabelGap = 8;
    private const double FigureWidth = 6.8;

    private List<SectionLabel> Labels(double x, double room)
    {
        var labels = view.Bands.Where(b => !b.Empty).Select(b => Label(b, x, room)).ToList();
        if (!names)
        {
            return labels;
        }

        if (view.FormerSpec is { } box && view.Former.Count > 0)
        {
            var size = $"Room for lights, {Length(box.OuterWidthMm)}\u00A0×\u00A0{Length(box.OuterDepthMm, true).Replace(' ', '\u00A0')}";
            labels.Add(Thing(size, view.Former[0].RightMm, (view.Former[0].LowMm + view.Former[0].HighMm) / 2, x, room));
        }

        labels.AddRange(view.Sheets.Where(s => s.Points.Any()).Select(s => (s.Name, Right: s.Points.MaxBy(p => p.XMm), High: s.Points.MaxBy(p => p.ZMm), s.Filled))
            .Select(s => Thing(s.Name, s.Filled ? s.Right.XMm : s.High.XMm, s.Filled ? s.Right.ZMm : s.High.ZMm - ((s.High.ZMm - s.Right.ZMm) / 4), x, room)));
        return labels;
    }

    private static SectionLabel Thing(string text, double anchorXMm, double anchorZMm, double x, double room) =>
        new(0, Wrap(text, SectionLabel.NameSize, room, 2), [], text, LayerState.Planned, x, 0, anchorXMm, anchorZMm);

    private SectionLabel Label(SectionBand band, double x, double room)
    {
        var l = band.Layer;
        List<string> lines = names ? Wrap($"{band.Number}  {l.Name}", SectionLabel.NameSize, room, 2) : [band.Number.ToString(CultureInfo.InvariantCulture)];
        var details = names ? Wrap(string.Join(" · ", Details(l)), SectionLabel.DetailSize, room, 2) : [];
        var mid = Math.Clamp((l.FromMm + l.ToMm) / 2, 0, view.HeightMm);
        return new SectionLabel(band.Number, lines, details, l.Name, l.State, x, 0, view.SpanMm(mid).Right, view.Drawn(mid));
    }

    private IEnumerable<string> Details(SectionLayer l) =>
        new[] { l.State == LayerState.Planned ? "" : SectionWords.Of(l.State), $"{Length(l.ToMm - l.FromMm, true)} deep", l.Note }.Where(s => s.Length > 0).Select(s => s.Replace(' ', '\u00A0'));

    // first down the column, each as near its layer as those above allow, then up from the bottom edge
    private List<SectionLabel> Spread(List<SectionLabel> labels, double top, double bottom)
    {
        var set = labels.Select(l => l with { AnchorX = X(l.AnchorX) - 3, AnchorY = Y(l.AnchorY) }).OrderBy(l => l.AnchorY).ToList();
        var y = top;
        for (var i = 0; i < set.Count; i++)
        {
            set[i] = set[i] with { Y = Math.Max(y, set[i].AnchorY - (set[i].Height / 2)) };
            y = set[i].Y + set[i].Height + LabelGap;
        }

        var floor = bottom;
        for (var i = set.Count - 1; i >= 0; i--)
        {
            set[i] = set[i] with { Y = Math.Min(set[i].Y, floor - set[i].Height) };
            floor = set[i].Y - LabelGap;
        }

        return set;
    }

    /// <summary>Breaks a text at its spaces into lines no wider than the room; what does not fit ends in an ellipsis.</summary>
    internal static List<string> Wrap(string text, double size, double room, int most)
    {
        bool Fits(string s) => LetterWidth.Of(s, size) <= room;
        var lines = new List<string> { "" };
        foreach (var word in text.Split(' '))
        {
            var longer = lines[^1].Length == 0 && lines.Count > 1 ? word : (lines[^1] + " " + word).TrimStart();
            if (lines[^1].Trim().Length > 0 && !Fits(longer))
            {
                lines.Add(word);
            }
            else
            {
                lines[^1] = longer;
            }
        }

        var shown = lines.Take(most).ToList();
        if (lines.Count > most)
        {
            shown[^1] += "…";
        }

        return [.. shown.Select(s => Fits(s) ? s : Cut(s, Fits))];
    }

    private static string Cut(string text, Func<string, bool> fits)
    {
        var cut = text.TrimEnd('…');
        while (cut.Length > 1 && !fits(cut + "…"))
        {
            cut = cut[..^1];
        }

        return cut + "…";
    }
}
