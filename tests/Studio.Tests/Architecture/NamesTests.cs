using System.Reflection;
using System.Runtime.CompilerServices;
using Studio.Engine;

namespace Studio.Tests.Architecture;

/// <summary>One name, one thing: a word that means two things is met twice and understood once.</summary>
public sealed class NamesTests
{
    // names that stand twice, each with the reason
    private static readonly Dictionary<string, string> Twice = new(StringComparer.Ordinal)
    {
        ["_Imports"] = "the compiler's own",
    };

    // a sheet is a data sheet, or what is cut: film, acrylic, wood
    private static readonly Dictionary<string, string> Sheets = new(StringComparer.Ordinal)
    {
        ["CureSheet"] = "a data sheet's times",
        ["DataSheet"] = "a data sheet",
        ["DataSheetCheck"] = "a data sheet",
        ["SheetClass"] = "what a resin's class adds to its data sheet",
        ["SheetData"] = "a data sheet's figures, for the fit",
        ["SheetDoubts"] = "doubts about a data sheet",
        ["SheetFigure"] = "a figure of a data sheet and its usual range",
        ["SheetFit"] = "the fit to a data sheet",
        ["SheetNumber"] = "a field of the data sheet's page",
        ["SheetRefusals"] = "what a data sheet's fit refuses",
        ["SheetSlips"] = "figures of a data sheet that were probably mistyped",
        ["SheetTrial"] = "a trial of the fit to a data sheet",
        ["SheetNesting"] = "parts laid out on a sheet to cut",
        ["SheetPart"] = "a part laid out on a sheet to cut",
        ["SheetUse"] = "how much of a sheet is cut",
    };

    private static IEnumerable<Type> Ours => new[] { typeof(Program).Assembly, typeof(Finding).Assembly }.SelectMany(a => a.GetTypes()).Where(Written);

    [Fact]
    public void No_name_stands_for_two_types() => Doubled(Ours).Except(Twice.Keys, StringComparer.Ordinal).ShouldBeEmpty();

    [Fact]
    public void A_name_that_stands_twice_is_seen() => Doubled([.. Ours, typeof(Planted.Mould)]).ShouldContain("Mould");

    [Fact]
    public void A_sheet_is_a_data_sheet_or_what_is_cut() =>
        Ours.Select(Name).Where(n => n.Contains("Sheet", StringComparison.Ordinal)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ShouldBe(Sheets.Keys.Order(StringComparer.Ordinal));

    [Fact]
    public void Any_other_sheet_is_seen() => Sheets.ShouldNotContainKey(Name(typeof(Planted.PriceSheet)));

    private static IEnumerable<string> Doubled(IEnumerable<Type> types) =>
        types.GroupBy(Name, StringComparer.Ordinal).Where(g => g.Distinct().Count() > 1).Select(g => g.Key);

    // a type with arguments has the name that people call it by
    private static string Name(Type type) => type.Name.Split('`')[0];

    // what stands by itself in a file of ours: not what the compiler made, nor a table's mapping inside its entity, nor a migration
    private static bool Written(Type t) =>
        !t.IsNested && t.Namespace?.StartsWith("Studio", StringComparison.Ordinal) == true && !t.Namespace.Contains(".Migrations", StringComparison.Ordinal)
        && t.GetCustomAttribute<CompilerGeneratedAttribute>() is null && !t.Name.StartsWith('<');

    private static class Planted
    {
        internal sealed class Mould;

        internal sealed class PriceSheet;
    }
}
