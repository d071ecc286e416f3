using System.Text;
using System.Xml.Linq;
using Studio.Bench;
using Studio.Keepsakes;
using Studio.Papers;
using Studio.Quotes;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Tokens;

namespace Studio.Tests.Papers;

/// <summary>The papers read back with PdfPig: words, pages, fonts, structure. Roles and scopes: ISO 32000-1, 14.8.</summary>
public sealed class PaperReadTests
{
    public static TheoryData<PaperSize> Sizes => [PaperSize.A4, PaperSize.Letter];

    [Theory, MemberData(nameof(Sizes))]
    public void Every_page_has_the_sheet_size_that_was_asked_for(PaperSize size)
    {
        var (width, height) = size is PaperSize.A4 ? (210 / 25.4 * 72, 297 / 25.4 * 72) : (8.5 * 72, 11.0 * 72);
        foreach (var page in Everything(size).SelectMany(p => p.GetPages()))
        {
            page.Width.ShouldBe(width, 0.1);
            page.Height.ShouldBe(height, 0.1);
        }
    }

    [Theory, MemberData(nameof(Sizes))]
    public void Every_font_travels_inside_the_file(PaperSize size)
    {
        foreach (var pdf in Everything(size))
        {
            var fonts = Dictionaries(pdf).Where(d => d.Data.TryGetValue("Type", out var type) && type is NameToken { Data: "FontDescriptor" }).ToList();
            fonts.ShouldNotBeEmpty();
            fonts.ShouldAllBe(f => f.Data.ContainsKey("FontFile2"));
            pdf.GetPages().SelectMany(p => p.Letters).Select(l => l.FontName!).Distinct()
                .ShouldAllBe(name => name.Contains("Source", StringComparison.Ordinal));
        }
    }

    [Theory, MemberData(nameof(Sizes))]
    public void Nothing_is_drawn_outside_the_margins_of_the_page(PaperSize size)
    {
        foreach (var page in Everything(size).SelectMany(p => p.GetPages()))
        {
            page.Letters.ShouldAllBe(l => l.BoundingBox.Left >= 0 && l.BoundingBox.Right <= page.Width && l.BoundingBox.Bottom >= 0 && l.BoundingBox.Top <= page.Height);
        }
    }

    [Theory, MemberData(nameof(Sizes))]
    public void Every_letter_is_tagged_or_an_artifact_and_every_page_follows_its_structure(PaperSize size)
    {
        foreach (var pdf in Everything(size))
        {
            foreach (var page in pdf.GetPages())
            {
                page.Dictionary.Data["Tabs"].ShouldBeOfType<NameToken>().Data.ShouldBe("S");
                var marked = page.GetMarkedContents();
                marked.ShouldAllBe(m => m.IsArtifact || m.MarkedContentIdentifier >= 0);
                marked.Sum(m => m.Letters.Count).ShouldBe(page.Letters.Count);
            }
        }
    }

    [Theory, MemberData(nameof(Sizes))]
    public void Tables_hold_rows_and_rows_hold_cells_whose_headers_say_what_they_head(PaperSize size)
    {
        foreach (var tree in Everything(size).Select(PaperTree.Of))
        {
            tree.All.Where(e => e.Role is "Table").SelectMany(t => t.Kids).ShouldAllBe(k => k.Role == "TR");
            tree.All.Where(e => e.Role is "TR").SelectMany(t => t.Kids).ShouldAllBe(k => k.Role == "TH" || k.Role == "TD");
            tree.All.Where(e => e.Role is "TH").ShouldAllBe(h => h.Scope == "Row" || h.Scope == "Column");
            tree.All.Where(e => e.Role is "Figure").ShouldAllBe(f => !string.IsNullOrWhiteSpace(f.Alt));
            tree.All.Where(e => e.Role is "L").SelectMany(l => l.Kids).ShouldAllBe(k => k.Role == "LI");
        }
    }

    [Fact]
    public void A_paper_has_one_first_heading_and_the_section_drawing_is_told_in_words()
    {
        using var pdf = PdfDocument.Open(QuotePaper.Create(PaperSamples.Quote(), PaperSize.A4));
        var all = PaperTree.Of(pdf).All.ToList();
        all.Count(e => e.Role is "H1").ShouldBe(1);
        all.Count(e => e.Role is "H2").ShouldBeGreaterThan(3);
        all.Single(e => e.Role is "Figure").Alt.ShouldBe(PaperSamples.Section().Alt);
        pdf.Structure.Catalog.CatalogDictionary.Data["Lang"].ShouldBeOfType<StringToken>().Data.ShouldBe("en-GB");
    }

    [Fact]
    public void The_title_keeps_its_marks_and_its_letters_in_the_metadata()
    {
        var model = PaperSamples.Quote() with { For = new PaperPerson("Ada & Co <x> Őry", []) };
        using var pdf = PdfDocument.Open(QuotePaper.Create(model, PaperSize.A4));
        pdf.Information.Title.ShouldBe("Quote Q-26-0012 for Ada & Co <x> Őry");
        pdf.TryGetXmpMetadata(out var xmp).ShouldBeTrue();
        XDocument.Parse(Encoding.UTF8.GetString(xmp!.GetXmlBytes().ToArray()).TrimStart('\uFEFF')).Descendants()
            .Where(e => e.Name.LocalName is "li").Select(e => e.Value).ShouldContain("Quote Q-26-0012 for Ada & Co <x> Őry");
    }

    [Fact]
    public void The_quote_names_the_remembered_the_total_and_where_to_sign_in_two_pages()
    {
        using var pdf = PdfDocument.Open(QuotePaper.Create(PaperSamples.Quote(), PaperSize.A4));
        pdf.NumberOfPages.ShouldBe(2);
        var text = Text(pdf);
        foreach (var words in new[] { "Ailsa Brodie", "In memory of Hamish Brodie", "£480.00", "£144.00", "£336.00", "4 April 2026", "You asked for it by 12 June 2026", "We promise it for 20 June 2026", "Signature", "not a toy", "button cell", "page 1 of 2", "page 2 of 2", "KS-26-00042-H" })
        {
            text.ShouldContain(words);
        }

        text.ShouldNotContain("!");
    }

    [Fact]
    public void Amounts_of_the_price_stand_under_one_another_on_the_right()
    {
        using var pdf = PdfDocument.Open(QuotePaper.Create(PaperSamples.Quote(), PaperSize.A4));
        var page = pdf.GetPages().Single(p => p.GetWords().Any(w => w.Text is "£400.00"));
        var words = page.GetWords().Where(w => w.BoundingBox.Left > page.Width / 2).ToList();
        var ends = new[] { "£400.00", "£80.00", "£480.00", "£144.00", "£336.00" }.Select(a => words.Single(w => w.Text == a).BoundingBox.Right).ToList();
        (ends.Max() - ends.Min()).ShouldBeLessThan(1);
    }

    [Fact]
    public void Letters_beyond_Latin_1_and_long_names_are_kept_whole()
    {
        using var pdf = PdfDocument.Open(QuotePaper.Create(PaperSamples.OddQuote(), PaperSize.Letter));
        var text = Text(pdf);
        foreach (var words in new[] { "Ada & Co <x>", "Őry-Łukaszewicz", "Żółwia", "Łódź", "Ελένη Παπαδοπούλου", "Фёдор Ильич", "£1,234,567.89" })
        {
            text.ShouldContain(words);
        }
    }

    [Fact]
    public void A_quote_of_bare_essentials_leaves_out_what_it_does_not_know()
    {
        using var pdf = PdfDocument.Open(QuotePaper.Create(PaperSamples.BareQuote(), PaperSize.A4));
        var text = Text(pdf);
        text.ShouldContain("80.000 JPY");
        text.ShouldNotContain("In memory of");
        text.ShouldNotContain("Deposit");
        text.ShouldNotContain("button");
    }

    /// <summary>Fields of the record: Spectrum, object entry (Collections Trust), suggested procedure.</summary>
    [Fact]
    public void The_receipt_holds_what_an_object_entry_record_wants()
    {
        using var pdf = PdfDocument.Open(ReceiptPaper.Create(PaperSamples.Receipt(), PaperSize.A4));
        var text = Text(pdf);
        foreach (var words in new[]
        {
            "KS-26-00001-H", "Ailsa Brodie", "Upper Pelling", "01632 960 177", "Rory Brodie", "Grandson", "Thursday 5 March 2026, 14:10", "To be set in a memorial piece", "Came by hand on 2 March, brought by Rory Brodie (grandson)",
            "a bunch tied with blue wool", "Brittle", "Complete", "9 objects", "48.2", "Set a part", "must not be trimmed", "30 June 2026", "For the studio", "Owner or depositor", "Insurance", "Shoe box",
            "Nothing is ever disposed of without the family's word",
        })
        {
            text.ShouldContain(words);
        }

        pdf.GetPage(1).GetImages().Count().ShouldBe(3);
    }

    [Fact]
    public void Forty_keepsakes_turn_the_page_under_a_repeated_header_and_none_is_lost()
    {
        using var pdf = PdfDocument.Open(ReceiptPaper.Create(PaperSamples.Receipt(40), PaperSize.A4));
        pdf.NumberOfPages.ShouldBeGreaterThan(2);
        var text = Text(pdf);
        foreach (var n in Enumerable.Range(1, 40))
        {
            text.ShouldContain(PaperSamples.Keepsake(n).EntryNumber);
        }

        var headed = pdf.GetPages().Count(p => Text(p).Contains("Condition and completeness", StringComparison.Ordinal));
        headed.ShouldBe(pdf.GetPages().Count(p => Text(p).Contains("KS-26-", StringComparison.Ordinal)));
        PaperTree.Of(pdf).All.Count(e => e is { Role: "TH", Scope: "Column" }).ShouldBe(5, "the repeated headers are artifacts, the first is the table's");
    }

    [Fact]
    public void A_condition_longer_than_a_page_runs_on_over_the_next()
    {
        var words = string.Join(' ', Enumerable.Range(1, 1500).Select(n => $"w{n}"));
        var model = PaperSamples.Receipt(1) with { Keepsakes = [PaperSamples.Keepsake(1) with { Condition = words }] };
        using var pdf = PdfDocument.Open(ReceiptPaper.Create(model, PaperSize.A4));
        var text = Text(pdf);
        text.ShouldContain("w1 ");
        text.ShouldContain("w1500");
        Enumerable.Range(1, 1500).Count(n => text.Contains($"w{n}", StringComparison.Ordinal)).ShouldBe(1500);
    }

    [Fact]
    public void A_photograph_that_cannot_be_read_leaves_the_receipt_whole()
    {
        using var pdf = PdfDocument.Open(ReceiptPaper.Create(PaperSamples.BareReceipt(), PaperSize.A4));
        Text(pdf).ShouldContain("KS-26-00001-A");
        pdf.GetPage(1).GetImages().ShouldBeEmpty();
    }

    [Fact]
    public void The_pour_sheet_says_grams_level_face_mark_and_times_on_one_page()
    {
        using var pdf = PdfDocument.Open(PourPaper.Create(PaperSamples.PourSheet(), PaperSize.A4));
        pdf.NumberOfPages.ShouldBe(1);
        var text = Text(pdf);
        foreach (var words in new[] { "Layer 3 of 5", "280.1", "126.1", "812.4", "99.1", "Level the mould first: to 0.19°", "Nitrile", "data sheet", "48 hours", "72 hours", "120 hours", "Room temperature", "Poured: day and time" })
        {
            text.ShouldContain(words);
        }

        var grams = pdf.GetPage(1).GetWords().First(w => w.Text == "280.1");
        grams.Letters[0].PointSize.ShouldBeGreaterThanOrEqualTo(24);
    }

    [Fact]
    public void Times_on_the_pour_sheet_are_rounded_the_careful_way()
    {
        // 14:10:20 + 6 h may pour from 20:11, must have poured by 02:10
        using var pdf = PdfDocument.Open(PourPaper.Create(PaperSamples.BarePourSheet(), PaperSize.A4));
        var text = Text(pdf).Replace('\u00A0', ' ');
        text.ShouldContain("8:11 PM");
        text.ShouldContain("2:10 AM");
        text.ShouldNotContain("8:10 PM");
    }

    [Fact]
    public async Task Papers_can_be_written_side_by_side()
    {
        var pages = await Task.WhenAll(Enumerable.Range(0, 8).Select(n => Task.Run(() => n % 2 == 0
            ? QuotePaper.Create(PaperSamples.Quote(), PaperSize.A4)
            : ReceiptPaper.Create(PaperSamples.Receipt(), PaperSize.Letter), TestContext.Current.CancellationToken)));
        foreach (var page in pages)
        {
            using var pdf = PdfDocument.Open(page);
            Text(pdf).ShouldContain("Ailsa Brodie");
        }
    }

    [Theory, MemberData(nameof(Sizes))]
    public void Qpdf_finds_nothing_to_complain_of(PaperSize size)
    {
        Tool.Need("qpdf");
        foreach (var (name, pdf) in PaperSet.All(size))
        {
            var (code, output) = PaperTools.QpdfCheck(pdf);
            code.ShouldBe(0, name + ": " + output);
            output.ShouldNotContain("WARNING", Case.Sensitive, name);
        }
    }

    private static IEnumerable<PdfDocument> Everything(PaperSize size) => PaperSet.All(size).Select(p => PdfDocument.Open(p.Pdf));

    /// <summary>Words line by line as a reader selects them; lines joined by spaces.</summary>
    private static string Text(PdfDocument pdf) => string.Join(' ', pdf.GetPages().Select(Text));

    private static string Text(Page page) => PaperWords.Of(page);

    private static IEnumerable<DictionaryToken> Dictionaries(PdfDocument pdf) =>
        pdf.Structure.CrossReferenceTable.ObjectOffsets.Keys.Select(k => pdf.Structure.GetObject(k).Data).OfType<DictionaryToken>();
}
