using System.Globalization;

namespace Studio.Drawing;

/// <summary>Names beside the drawing, kept apart.</summary>
public sealed partial class SectionLayout
{
    private List<SectionLabel> Labels(double x, double room)
    {
        var letters = (int)Math.Max(8, room / LetterWidth);
        var labels = view.Bands.Where(b => b.Points.Count > 0).Select(b => Label(b, x, letters)).ToList();
        if (names && view.FormerSpec is { } box && view.Former.Count > 0)
        {
            var lines = Wrap($"Room for lights, {Length(box.OuterWidthMm)}\u00A0×\u00A0{Length(box.OuterDepthMm, true).Replace(' ', '\u00A0')}", letters);
            var mid = (view.Former[0].LowMm + view.Former[0].HighMm) / 2;
            labels.Add(new SectionLabel(0, lines, "", "", LayerState.Planned, x, 0, lines.Count * LineHeight, view.Former[0].RightMm, mid));
        }

        return labels;
    }

    private SectionLabel Label(SectionBand band, double x, int letters)
    {
        var l = band.Layer;
        List<string> lines = names ? Wrap($"{band.Number}  {l.Name}", letters) : [band.Number.ToString(CultureInfo.InvariantCulture)];
        var detail = !names ? "" : string.Join(" · ", new[] { l.State == LayerState.Planned ? "" : SectionWords.Of(l.State), $"{Length(l.ToMm - l.FromMm, true)} deep", l.Note }.Where(s => s.Length > 0));
        var mid = Math.Clamp((l.FromMm + l.ToMm) / 2, 0, view.HeightMm);
        return new SectionLabel(band.Number, lines, detail, l.Name, l.State, x, 0, (lines.Count * LineHeight) + (detail.Length > 0 ? DetailHeight : 0), view.WidthMm(mid) / 2, view.Drawn(mid));
    }

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

    private static List<string> Wrap(string text, int letters)
    {
        var lines = new List<string> { "" };
        foreach (var word in text.Split(' '))
        {
            if (lines[^1].Length > 0 && lines[^1].Length + 1 + word.Length > letters)
            {
                lines.Add("");
            }

            lines[^1] = lines[^1].Length == 0 && lines.Count > 1 ? word : (lines[^1] + " " + word).TrimStart();
        }

        var shown = lines.Take(2).Select(s => s.Length > letters ? s[..(letters - 1)] + "…" : s).ToList();
        if (lines.Count > 2)
        {
            shown[^1] = shown[^1].TrimEnd('…') + "…";
        }

        return shown;
    }
}
