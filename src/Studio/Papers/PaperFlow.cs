using System.Globalization;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;

namespace Studio.Papers;

/// <summary>What a whole paper shares.</summary>
/// <param name="Title">The document's title, as a reader's window shows it.</param>
/// <param name="Foot">Left end of every page's foot.</param>
/// <param name="MadeUtc">When it was written, from the caller's clock.</param>
internal sealed record PaperSetup(string Title, PaperSize Size, PaperType Type, string Language, string Author, string Foot, DateTime MadeUtc)
{
    public double SideMm { get; init; } = 22;

    public double TopMm { get; init; } = 18;

    /// <summary>Free below the text, the foot within it [mm].</summary>
    public double BottomMm { get; init; } = 22;

    /// <summary>False for sheets whose every millimetre is taken, such as labels.</summary>
    public bool HasFoot { get; init; } = true;
}

/// <summary>
/// Lays words, tables and drawings down the page and turns to the next. All lengths in points unless they end in Mm.
/// A paper is written twice: once dry to count its pages, once in ink.
/// </summary>
internal sealed partial class PaperFlow
{
    private readonly PaperSetup _setup;
    private readonly PaperInk _ink;
    private readonly int _total;
    private int _pages;
    private bool _endless;

    private PaperFlow(PaperSetup setup, PaperInk ink, int total)
    {
        (_setup, _ink, _total) = (setup, ink, total);
        Left = Measure.Mm(setup.SideMm);
        Width = Measure.Mm(setup.Size.WidthMm() - (2 * setup.SideMm));
        StartPage();
    }

    public PaperType Type => _setup.Type;

    public PaperInk Ink => _ink;

    /// <summary>Left edge of the present column.</summary>
    public double Left { get; private set; }

    /// <summary>Width of the present column.</summary>
    public double Width { get; private set; }

    /// <summary>Where the next line's top goes.</summary>
    public double Y { get; set; }

    private double Top => Measure.Mm(_setup.TopMm);

    private double Bottom => Measure.Mm(_setup.Size.HeightMm() - _setup.BottomMm);

    /// <summary>What is left of the page; endless while a block is measured.</summary>
    public double Rest => _endless ? double.MaxValue : Bottom - Y;

    public double PageBody => Bottom - Top;

    public static byte[] Render(PaperSetup setup, Action<PaperFlow> body)
    {
        var count = new PaperFlow(setup, new PaperInk(null), 0);
        body(count);

        using var document = new PdfDocument();
        var title = PaperWrap.Clean(setup.Title);
        document.Info.Title = title;
        document.Info.Author = PaperWrap.Clean(setup.Author);
        document.Info.CreationDate = setup.MadeUtc;
        document.ViewerPreferences.DisplayDocTitle = true;
        UAManager.ForDocument(document).SetDocumentLanguage(setup.Language);
        var ink = new PaperInk(document);
        body(new PaperFlow(setup, ink, count._pages));
        ink.Close();

        using var file = new MemoryStream();
        document.Save(file, closeStream: false);
        return PdfFinisher.Finish(file.ToArray(), title, document.Info.Author);
    }

    /// <summary>Turns the page; the column keeps its place.</summary>
    public void Break()
    {
        if (!_endless)
        {
            StartPage();
        }
    }

    /// <summary>Turns the page when less than <paramref name="height"/> is left, unless it is fresh.</summary>
    public void Need(double height)
    {
        if (Rest < height && Y > Top)
        {
            Break();
        }
    }

    public void Space(double height)
    {
        if (Y > Top)
        {
            Y += height;
        }
    }

    /// <summary>Height that a block would take if the page had no end; nothing is drawn.</summary>
    public double HeightOf(Action block)
    {
        var (y, endless) = (Y, _endless);
        _ink.Mute();
        _endless = true;
        try
        {
            block();
            return Y - y;
        }
        finally
        {
            (Y, _endless) = (y, endless);
            _ink.Unmute();
        }
    }

    /// <summary>Keeps a block on one page where it fits one; longer ones break where they must.</summary>
    public void Keep(Action block)
    {
        var height = HeightOf(block);
        if (height <= PageBody)
        {
            Need(height);
        }

        block();
    }

    /// <summary>Sets blocks side by side, each with its share of the width. Blocks taller than a page go below one another.</summary>
    public void Columns(double gap, params (double Share, Action Draw)[] columns)
    {
        var left = Left;
        var room = Width - (gap * (columns.Length - 1));
        var sum = columns.Sum(c => c.Share);
        var tallest = columns.Max(c => Within(left, room * c.Share / sum, () => HeightOf(c.Draw)));
        if (tallest > PageBody)
        {
            foreach (var column in columns)
            {
                column.Draw();
            }

            return;
        }

        Need(tallest);
        var top = Y;
        foreach (var (share, draw) in columns)
        {
            Y = top;
            Within(left, room * share / sum, () =>
            {
                draw();
                return 0;
            });
            left += (room * share / sum) + gap;
        }

        Y = top + tallest;
    }

    /// <summary>Runs a block in a narrower column.</summary>
    public void Inset(double left, double right, Action block) => Within(Left + left, Width - left - right, () =>
    {
        block();
        return 0;
    });

    private double Within(double left, double width, Func<double> run)
    {
        var before = (Left, Width);
        (Left, Width) = (left, width);
        try
        {
            return run();
        }
        finally
        {
            (Left, Width) = before;
        }
    }

    private void StartPage()
    {
        _pages++;
        _ink.NewPage(_setup.Size);
        Y = Top;
        if (_setup.HasFoot)
        {
            Foot();
        }
    }

    private void Foot()
    {
        var left = Measure.Mm(_setup.SideMm);
        var right = Measure.Mm(_setup.Size.WidthMm() - _setup.SideMm);
        var y = Measure.Mm(_setup.Size.HeightMm() - 12);
        var page = string.Create(CultureInfo.InvariantCulture, $"page {_pages} of {Math.Max(_total, _pages)}");
        var style = Type.Label;
        using var scope = _ink.Artifact();
        _ink.Line(left, y - 11, right, y - 11, PaperInks.Line);
        _ink.Text(Fit(_setup.Foot, style, right - left - 80), style, left, y);
        _ink.Text(page, style, right - _ink.Width(page, style), y);
    }
}
