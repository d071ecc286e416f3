using System.Globalization;
using Studio.Engine;
using Studio.Engine.Price;
using Studio.Shell;

namespace Studio.Quotes;

/// <summary>A quote worked out: the engine's result and each line with how it came about, or what stands in the way.</summary>
public sealed record Reckoning(PriceResult? Result, IReadOnlyList<QuoteLine> Lines, IReadOnlyList<InputError> Errors)
{
    private static readonly decimal[] Margins = [20, 30, 40, 50];

    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en-GB");

    /// <summary>Works the form out through the engine, which is the only place that computes a price.</summary>
    public static Reckoning Of(QuoteForm form)
    {
        var outcome = PriceCalculation.Run(form.Input());
        return outcome.Ok ? new(outcome.Value, [.. Numbered(LinesOf(form, outcome.Value))], []) : new(null, [], outcome.Errors);
    }

    /// <summary>The margin and profit that a total of the maker's own choosing gives; words where it would lose money.</summary>
    public static WhatIf AtTotal(QuoteForm form, decimal total)
    {
        if (total <= 0)
        {
            return new(null, "Type what you would like to ask.");
        }

        // no margin and a step of the whole amount: the engine rounds up to exactly this total, and says what it leaves
        var at = PriceCalculation.Run(form.Input() with { MarginPercent = 0, RoundTo = total });
        return at switch
        {
            { Ok: false } => new(null, at.Errors[0].Message),
            { Value: var v } when v.Total == total => new(v, ""),
            { Value: var v } => new(null, $"That is below {Say.Money(v.BreakEvenTotal, form.Currency)}, where nothing is earned and nothing lost."),
        };
    }

    /// <summary>What the same piece would cost them at other margins.</summary>
    public static IReadOnlyList<PriceResult> AtMargins(QuoteForm form) =>
        [.. Margins.Select(m => PriceCalculation.Run(form.Input() with { MarginPercent = m })).Where(o => o.Ok).Select(o => o.Value)];

    private static IEnumerable<QuoteLine> LinesOf(QuoteForm form, PriceResult result)
    {
        foreach (var (row, cost) in form.Bought.Where(b => b.Priced).Zip(result.Materials))
        {
            yield return Line(row.Kind, cost.Name, $"{Amount(row.Used)} {row.Unit} of a pack of {Amount(row.PackSize!.Value)} {row.Unit} at {Say.Money(row.PackPrice!.Value, form.Currency)}", cost.Cost);
        }

        foreach (var (row, cost) in form.Work.Where(w => w.Kind != CostLines.Equipment).Zip(result.Labour))
        {
            yield return Line(row.Kind, cost.Name, Hourly(row, form), cost.Cost);
        }

        foreach (var (row, cost) in form.Work.Where(w => w.Kind == CostLines.Equipment).Zip(result.Equipment))
        {
            yield return Line(row.Kind, cost.Name, Hourly(row, form), cost.Cost);
        }

        var minutes = form.Work.Where(w => w.Kind != CostLines.Equipment).Sum(w => w.Minutes);
        yield return Line("overhead", "Overhead", $"{Amount(minutes)} minutes of hands at {Say.Money(form.OverheadMonthly, form.Currency)} a month for {Amount(form.BenchHoursPerMonth)} bench hours", result.Overhead);
        yield return Line("remakes", "Remakes", $"{Amount(form.RemakePercent)} of 100 castings fail: each of the {Amount(100 - form.RemakePercent)} good ones carries its share of their making", result.Remakes);
        yield return Line("packaging", "Packaging", "as entered", result.Packaging);
        yield return Line("delivery", "Delivery", "as entered", result.Delivery);
        yield return Line("fee", "Payment fee", $"{Amount(form.FeePercent)} % of what they pay and {Say.Money(form.FeeFixed, form.Currency)}", result.Fee);
    }

    private static string Hourly(WorkRow row, QuoteForm form) => $"{Amount(row.Minutes)} minutes at {Say.Money(row.RatePerHour, form.Currency)} an hour";

    private static string Amount(decimal value) => value.ToString("#,0.##", English);

    private static QuoteLine Line(string kind, string name, string how, decimal cost) => new() { Kind = kind, Name = name, HowComputed = how, Cost = cost };

    private static IEnumerable<QuoteLine> Numbered(IEnumerable<QuoteLine> lines) => lines.Select((l, i) =>
    {
        l.Order = i;
        return l;
    });
}

/// <summary>What a wished-for total gives, or why it can't be.</summary>
public sealed record WhatIf(PriceResult? Result, string Words);
