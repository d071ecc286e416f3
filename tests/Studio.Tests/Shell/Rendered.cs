using Microsoft.AspNetCore.Components;
using Mono.Cecil;
using Mono.Cecil.Cil;
using Studio.Pieces;
using Studio.Shell;

namespace Studio.Tests.Shell;

/// <summary>Who renders whom, read from the compiled components: markup, code-behind and every lambda of theirs.</summary>
internal sealed class Rendered
{
    private static readonly string[] Typed = [typeof(NumberField).FullName!, typeof(TimeField).FullName!, typeof(MomentField).FullName!];
    private static readonly string[] Gatherers = [typeof(KeptForm).FullName!, typeof(KeptNumbers).FullName!];

    private readonly Dictionary<string, HashSet<string>> children;

    private Rendered(Dictionary<string, HashSet<string>> children) => this.children = children;

    /// <summary>Components in which a number or a time is typed.</summary>
    public IEnumerable<string> Askers => children.Where(c => c.Value.Overlaps(Typed)).Select(c => c.Key);

    /// <summary>Components that gather what cannot be read and have a number field below them.</summary>
    public IEnumerable<string> Hosts => children.Keys.Where(c => Gathers(c) && AskersOf(c).Any());

    /// <summary>The components that a type name stands for, in the studio and in any other assembly given.</summary>
    public static Rendered In(params Type[] assembliesOf)
    {
        var all = new Dictionary<string, HashSet<string>>(StringComparer.Ordinal);
        foreach (var path in assembliesOf.Select(t => t.Assembly.Location).Distinct(StringComparer.Ordinal))
        {
            using var module = ModuleDefinition.ReadModule(path);
            foreach (var type in module.Types.Where(t => t.IsClass))
            {
                all[type.FullName] = [.. Opened(type)];
            }
        }

        all[typeof(PiecePage).FullName!].UnionWith(PiecePart.All.Select(p => p.FullName!)); // by DynamicComponent
        all.Remove(typeof(KeptForm).FullName!); // its numbers are its host's
        return new(all);
    }

    /// <summary>Components with number fields that belong to a host: below it, and to no gatherer between.</summary>
    public IEnumerable<string> AskersOf(string host) => Below(host, []).Where(c => children[c].Overlaps(Typed));

    /// <summary>Ways up from a number field at whose end nothing gathers, so that nothing would stop a save.</summary>
    public IEnumerable<string> Forgotten() => Askers.SelectMany(a => Ways(a, [a])).Distinct(StringComparer.Ordinal);

    private IEnumerable<string> Ways(string component, string[] way)
    {
        if (Gathers(component))
        {
            return [];
        }

        var above = children.Where(c => c.Value.Contains(component) && !way.Contains(c.Key, StringComparer.Ordinal)).Select(c => c.Key).ToList();
        return above.Count == 0 ? [string.Join(" < ", way)] : above.SelectMany(p => Ways(p, [.. way, p]));
    }

    private bool Gathers(string component) => children[component].Overlaps(Gatherers);

    private IEnumerable<string> Below(string component, HashSet<string> seen) =>
        [component, .. children[component].Where(c => children.ContainsKey(c) && !Gathers(c) && seen.Add(c)).SelectMany(c => Below(c, seen))];

    private static IEnumerable<string> Opened(TypeDefinition type) =>
    [
        .. type.Methods.Where(m => m.HasBody).SelectMany(m => m.Body.Instructions)
            .Where(i => i.OpCode.Code is Code.Call or Code.Callvirt).Select(i => i.Operand).OfType<GenericInstanceMethod>()
            .Where(m => m.Name == "OpenComponent").Select(m => m.GenericArguments[0].GetElementType().FullName),
        .. type.NestedTypes.SelectMany(Opened),
    ];
}

/// <summary>A number field that nothing gathers: planted, to be seen.</summary>
public sealed class PlantedAsker : ComponentBase
{
    protected override void BuildRenderTree(Microsoft.AspNetCore.Components.Rendering.RenderTreeBuilder builder)
    {
        builder.OpenComponent<NumberField>(0);
        builder.CloseComponent();
    }
}

/// <summary>A form with a number that no scene shows: planted, to be seen.</summary>
public sealed class PlantedHost : ComponentBase
{
    private readonly UnreadNumbers unread = new();

    protected override void BuildRenderTree(Microsoft.AspNetCore.Components.Rendering.RenderTreeBuilder builder)
    {
        builder.OpenComponent<KeptNumbers>(0);
        builder.AddAttribute(1, nameof(KeptNumbers.Of), unread);
        builder.AddAttribute(2, nameof(KeptNumbers.ChildContent), (RenderFragment)(inner =>
        {
            inner.OpenComponent<NumberField>(0);
            inner.CloseComponent();
        }));
        builder.CloseComponent();
    }
}
