using AngleSharp.Dom;
using Bunit;
using Microsoft.AspNetCore.Components;
using Studio.Shell;

namespace Studio.Tests.Shell;

/// <summary>One form with number fields as a test holds it: how it is kept, and a number that can be.</summary>
internal sealed record NumberScene(IRenderedComponent<IComponent> Page, Func<Task> KeepAsync)
{
    /// <summary>A field of it and a number with which it is kept; empty where nothing is kept, only worked out.</summary>
    public (string Label, string Text) Good { get; init; }

    /// <summary>Components whose numbers belong to another form on the same page.</summary>
    public Type[] Others { get; init; } = [];

    /// <summary>The component whose numbers are meant; null for all that are not of <see cref="Others"/>.</summary>
    public Type? Only { get; init; }

    /// <summary>What must not be shown while a number cannot be read: an answer that is worked out from it.</summary>
    public string Answer { get; init; } = "";

    public int Count => Fields().Count;

    /// <summary>True for a length, mass, time, amount or share, which is never less than nothing. What may be is named here.</summary>
    public static bool NeverBelowZero(NumberField field) => field.Unit is not ("°C" or "°" or "K") && field.Label is not "Forwards of the middle";

    public IRenderedComponent<NumberField> Field(int index) => Fields()[index];

    public IRenderedComponent<NumberField> Field(string label) => Fields().First(f => ((IReadField)f.Instance).Name.StartsWith(label, StringComparison.Ordinal));

    public IReadOnlyList<IElement> All(string selector) => Page.FindAll(selector);

    /// <summary>Types it as a person does and waits until the page has taken it.</summary>
    public async Task TypeAsync(IRenderedComponent<NumberField> field, string text, Action later)
    {
        var input = field.Find("input");
        await (field.Instance.Immediate ? input.InputAsync(new() { Value = text }) : input.ChangeAsync(new() { Value = text }));
        later();
        if (!field.IsDisposed)
        {
            field.WaitForAssertion(() => ((IReadField)field.Instance).Typed.ShouldBe(text));
        }
    }

    private List<IRenderedComponent<NumberField>> Fields()
    {
        var others = In(Others);
        var only = Only is null ? null : In([Only]);
        return [.. Page.FindComponents<NumberField>().Where(f => !f.Instance.Disabled && !others.Contains(f.Instance) && only?.Contains(f.Instance) != false)];
    }

    private HashSet<NumberField> In(Type[] parts) => parts.Length == 0 ? [] :
        [.. Page.FindComponents<IComponent>().Where(c => parts.Contains(c.Instance.GetType())).SelectMany(c => c.FindComponents<NumberField>()).Select(f => f.Instance)];
}
