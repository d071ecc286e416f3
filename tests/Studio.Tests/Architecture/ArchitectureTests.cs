using ArchUnitNET.Domain;
using ArchUnitNET.Domain.Dependencies;
using ArchUnitNET.Loader;
using Studio.Data;

namespace Studio.Tests.Architecture;

public sealed class ArchitectureTests
{
    private static readonly ArchUnitNET.Domain.Architecture Whole = new ArchLoader()
        .LoadAssemblies(typeof(Program).Assembly, typeof(Engine.Finding).Assembly, typeof(ArchitectureTests).Assembly)
        .Build();

    private static readonly string[] ForbiddenToEngine =
    [
        "Microsoft.EntityFrameworkCore", "Microsoft.AspNetCore", "Microsoft.Extensions", "MudBlazor", "System.IO.File", "System.IO.Directory", "System.IO.Path",
        "System.Net", "System.Data", "System.Environment", "System.TimeProvider", "System.Random", "System.Threading.Thread",
    ];

    private static readonly string[] Formatting = ["Abs", "Ceiling", "Clamp", "Floor", "Max", "Min", "Round"];

    private static readonly string[] Naming = ["Find", "Parse", "TryParse", "Words"];

    private static readonly string[] ForbiddenCalls = ["get_Now()", "get_UtcNow()", "get_Today()", "get_CurrentCulture()", "get_CurrentUICulture()"];

    private static readonly HashSet<string> Components =
        [.. new[] { typeof(Program).Assembly, typeof(ArchitectureTests).Assembly }.SelectMany(a => a.GetTypes()).Where(t => t.IsSubclassOf(typeof(Microsoft.AspNetCore.Components.ComponentBase))).Select(t => t.FullName!)];

    private static IEnumerable<IType> Ours => Whole.Types.Where(t => !Planted(t) && !IsTest(t));

    [Fact]
    public void Code_follows_the_arrows() => new Arrows(Drawing()).Broken(Ours).ShouldBeEmpty();

    [Fact]
    public void A_planted_arrow_is_seen_also_through_an_async_method()
    {
        var broken = new Arrows(Drawing()).Broken(Whole.Types.Where(t => t.FullName.Contains("PlantedArrow", StringComparison.Ordinal)));
        broken.ShouldContain(b => b.StartsWith("Studio.Moulds --> Studio.Quotes", StringComparison.Ordinal));
    }

    [Fact]
    public void An_arrow_taken_out_of_the_drawing_turns_the_code_red() =>
        new Arrows(Drawing()).Without("Studio.Engine.Layers", "Studio.Engine.Moulds").Broken(Ours)
            .ShouldContain(b => b.StartsWith("Studio.Engine.Layers --> Studio.Engine.Moulds", StringComparison.Ordinal));

    [Fact]
    public void Every_arrow_of_the_drawing_is_used() => new Arrows(Drawing()).Stale(Ours).ShouldBeEmpty();

    [Fact]
    public void An_arrow_that_nothing_uses_is_seen() =>
        new Arrows(Drawing() + "\n[Studio.Tips] --> [Studio.Quotes]").Stale(Ours).ShouldBe(["Studio.Tips --> Studio.Quotes"]);

    [Fact]
    public void No_room_knows_one_that_knows_it() => new Arrows(Drawing()).Cycles().ShouldBeEmpty();

    [Fact]
    public void A_planted_cycle_is_seen() =>
        new Arrows(Drawing() + "\n[Studio.Customers] --> [Studio.Quotes]").Cycles().ShouldNotBeEmpty();

    [Fact]
    public void Raw_SQL_names_only_the_tables_of_its_own_room() => RawSql.Foreign(Sources.Program("*.cs")).ShouldBeEmpty();

    [Theory]
    [InlineData("""db.Database.SqlQuery<int>($"SELECT COUNT(*) FROM \"Piece\" WHERE 1 = 1")""")]
    [InlineData("""db.Database.ExecuteSqlRaw("delete from Pour")""")]
    public void Raw_SQL_of_another_room_is_seen(string line) =>
        RawSql.Foreign([(Path.Combine("src", "Studio", "Moulds", "Planted.cs"), line)]).ShouldHaveSingleItem();

    [Fact]
    public void Every_folder_is_in_the_drawing()
    {
        var folders = Ours.Select(t => t.Namespace?.FullName).OfType<string>()
            .Where(n => n.StartsWith("Studio.", StringComparison.Ordinal) && n is not "Studio.Engine")
            .Select(n => string.Join('.', n.Split('.').Take(n.StartsWith("Studio.Engine.", StringComparison.Ordinal) ? 3 : 2)))
            .Distinct(StringComparer.Ordinal);
        folders.Except(new Arrows(Drawing()).Folders, StringComparer.Ordinal).ShouldBeEmpty();
    }

    [Fact]
    public void The_engine_is_pure() => Impure(Ours).ShouldBeEmpty();

    [Theory]
    [InlineData("PlantedFile")]
    [InlineData("PlantedClock")]
    [InlineData("PlantedCulture")]
    public void A_planted_impurity_is_seen(string name) =>
        Impure(Whole.Types.Where(t => t.Name == name)).ShouldNotBeEmpty();

    [Fact]
    public void Pages_do_not_touch_the_database() => PagesWith(Ours, IsDatabase).ShouldBeEmpty();

    [Fact]
    public void A_planted_page_that_reads_the_database_is_seen() =>
        PagesWith(Whole.Types.Where(t => t.FullName.Contains("PlantedDataPage", StringComparison.Ordinal)), IsDatabase).ShouldNotBeEmpty();

    [Fact]
    public void A_planted_component_of_any_name_that_asks_the_engine_is_seen() =>
        PagesWith(Whole.Types.Where(t => t.FullName.Contains("PlantedHeatCorner", StringComparison.Ordinal)), IsComputing).ShouldNotBeEmpty();

    [Fact]
    public void Pages_do_not_compute() => PagesWith(Ours, IsComputing).ShouldBeEmpty();

    [Fact]
    public void A_planted_page_that_computes_is_seen() =>
        PagesWith(Whole.Types.Where(t => t.FullName.Contains("PlantedSumPage", StringComparison.Ordinal)), IsComputing).ShouldNotBeEmpty();

    private static List<string> Impure(IEnumerable<IType> types) =>
        [.. types.Where(t => t.FullName.StartsWith("Studio.Engine.", StringComparison.Ordinal))
            .SelectMany(t => t.Dependencies.Select(d => (t, Target: d.Target.FullName, Member: (d as MethodCallDependency)?.TargetMember.Name)))
            .Where(d => ForbiddenToEngine.Any(f => d.Target.StartsWith(f, StringComparison.Ordinal)) || (d.Member is { } m && ForbiddenCalls.Any(c => m.EndsWith(c, StringComparison.Ordinal))))
            .Select(d => $"{d.t.FullName} uses {d.Target} {d.Member}")];

    // a page is whatever descends from Blazor's component, by whatever name, with what the compiler made of its async methods
    private static List<string> PagesWith(IEnumerable<IType> types, Func<ITypeDependency, bool> forbidden) =>
        [.. types.Where(IsPage)
            .SelectMany(t => t.Dependencies.Select(d => (t, d)))
            .Where(d => forbidden(d.d))
            .Select(d => $"{d.t.FullName} uses {d.d.Target.FullName} {(d.d as MethodCallDependency)?.TargetMember.Name}".TrimEnd())
            .Distinct(StringComparer.Ordinal)];

    private static bool IsPage(IType type) => Components.Contains(type.FullName.Split('+')[0].Split('/')[0]);

    private static bool IsDatabase(ITypeDependency d) =>
        d.Target.FullName.StartsWith("Microsoft.EntityFrameworkCore", StringComparison.Ordinal) || d.Target.FullName.StartsWith(typeof(StudioDb).FullName!, StringComparison.Ordinal);

    // an entry point of the engine is a static act of its; what it lists, finds in a list, names or reads from a label may be shown.
    // Rounding and the corners of a drawing are formatting; roots, powers and angles are not.
    private static bool IsComputing(ITypeDependency d) => d is MethodCallDependency { TargetMember: MethodMember member } && d.Target.FullName switch
    {
        "System.Math" or "System.MathF" => !Formatting.Contains(member.Name.Split('(')[0], StringComparer.Ordinal),
        var target => member.IsStatic == true && target.StartsWith("Studio.Engine.", StringComparison.Ordinal)
            && !member.Name.StartsWith("get_", StringComparison.Ordinal) && !member.Name.StartsWith("op_", StringComparison.Ordinal) && !Naming.Contains(member.Name.Split('(')[0], StringComparer.Ordinal),
    };

    private static bool Planted(IType type) => type.FullName.Contains("Planted", StringComparison.Ordinal);

    private static bool IsTest(IType type) => type.Assembly.Name.StartsWith("Studio.Tests", StringComparison.Ordinal);

    private static string Drawing() => File.ReadAllText(Path.Combine(Sources.Root(), "docs", "arrows.puml"));
}
