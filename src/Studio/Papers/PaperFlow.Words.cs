namespace Studio.Papers;

internal sealed partial class PaperFlow
{
    /// <summary>The paper's one first heading.</summary>
    public void Title(string text)
    {
        var lines = PaperWrap.Lines(text, Width, s => _ink.Width(s, Type.Title)).Count;
        Block("H1", text, lines > 2 ? Type.LongTitle : Type.Title);
    }

    /// <summary>A heading that stays with what follows it.</summary>
    public void Heading(string text, double before = 14)
    {
        Need(before + Type.Heading.Leading + (3 * Type.Text.Leading));
        Space(before);
        Block("H2", text, Type.Heading);
        Y += 3;
    }

    /// <summary>A paragraph, broken into lines and over pages.</summary>
    public void Text(string? text, PaperStyle? style = null, bool right = false)
    {
        if (!string.IsNullOrWhiteSpace(text))
        {
            Block("P", text, style ?? Type.Text, right);
        }
    }

    /// <summary>A list, one mark each; boxes to tick in place of dots where hands work down it.</summary>
    public void Bullets(IReadOnlyList<string> lines, PaperStyle? style = null, bool tick = false)
    {
        if (lines.Count == 0)
        {
            return;
        }

        style ??= Type.Text;
        var indent = tick ? style.Font.Size * 1.7 : style.Font.Size * 1.1;
        using var list = _ink.Tag("L");
        foreach (var line in lines.Where(l => !string.IsNullOrWhiteSpace(l)))
        {
            Bullet(line, style, indent, tick);
        }
    }

    private void Bullet(string line, PaperStyle style, double indent, bool tick)
    {
        var set = PaperWrap.Lines(line, Width - indent, s => _ink.Width(s, style));
        Need(style.Leading * Math.Min(set.Count, 2));
        using var item = _ink.Tag("LI");
        if (tick)
        {
            var side = style.Font.Size * 0.95;
            TickBox(Left, Y + style.Ascent - (side * 0.86), side);
        }
        else
        {
            using var mark = _ink.Tag("Lbl");
            _ink.Text("•", style.In(PaperInks.Amber), Left, Y + style.Ascent);
        }

        using var body = _ink.Tag("LBody");
        Inset(indent, 0, () => Lines(set, style, right: false));
        Y += tick ? style.Leading * 0.18 : 1.5;
    }

    /// <summary>An empty square to tick by hand.</summary>
    public void TickBox(double x, double y, double side)
    {
        using var scope = _ink.Artifact();
        _ink.Rectangle(new PdfSharp.Drawing.XRect(x, y, side, side), null, PaperInks.Ink, 0.9);
    }

    /// <summary>One tagged block of wrapped lines.</summary>
    public void Block(string tag, string text, PaperStyle style, bool right = false)
    {
        var lines = PaperWrap.Lines(text, Width, s => _ink.Width(s, style));
        Need(style.Leading * Math.Min(lines.Count, 2));
        using var scope = _ink.Tag(tag);
        Lines(lines, style, right);
    }

    private void Lines(IReadOnlyList<string> lines, PaperStyle style, bool right)
    {
        for (var i = 0; i < lines.Count; i++)
        {
            // the last line of a paragraph never stands alone at the head of a page
            Need(style.Leading * (i == lines.Count - 2 ? 2 : 1));
            var x = right ? Left + Width - _ink.Width(lines[i], style) : Left;
            _ink.Text(lines[i], style, x, Y + style.Ascent);
            Y += style.Leading;
        }
    }

    /// <summary>One line's worth of text, cut with an ellipsis where it is too long.</summary>
    public string Fit(string text, PaperStyle style, double width)
    {
        var line = PaperWrap.Clean(text).Replace('\n', ' ');
        if (_ink.Width(line, style) <= width)
        {
            return line;
        }

        var letters = System.Globalization.StringInfo.ParseCombiningCharacters(line);
        var count = letters.Length - 1;
        while (count > 0 && _ink.Width(line[..letters[count]].TrimEnd() + "…", style) > width)
        {
            count--;
        }

        return line[..letters[count]].TrimEnd() + "…";
    }
}
