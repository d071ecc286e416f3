using Studio.Engine.Cure;
using Studio.Engine.Forecast;
using Studio.Engine.Json;
using Studio.Engine.Layers;
using Studio.Engine.Meshes;
using Studio.Engine.Price;
using Studio.Engine.Time;

namespace Studio.Engine;

/// <summary>Every calculation by its name on the command line: JSON text in, exit code and JSON text out. See docs/calculations.md.</summary>
public static class Calculations
{
    /// <summary>Name to function. None of them throws for any text.</summary>
    public static IReadOnlyDictionary<string, Func<string, OpenMesh, Answer>> All { get; } = new Dictionary<string, Func<string, OpenMesh, Answer>>(StringComparer.Ordinal)
    {
        ["layers"] = (text, open) => Answer.Of(LayersJson.Run(text, open), Written.Text),
        ["cure"] = (text, open) => Answer.Of(CureCommand.Run(text, open), CureResultJson.Write),
        ["heat"] = (text, open) => Answer.Of(HeatJson.Run(text, open), HeatResultJson.Write),
        ["time"] = (text, _) => Answer.Of(TimeJson.Run(text, new CureModels([]).Likely), TimeResultJson.Write),
        ["price"] = (text, _) => Answer.Of(PriceJson.Run(text), PriceJson.Write),
    };

    /// <summary>Runs a calculation by name; an unknown name is an answer too.</summary>
    /// <param name="open">Opens the mesh that an input names; without it none can be named.</param>
    public static Answer Run(string what, string text, OpenMesh? open = null) =>
        All.TryGetValue(what, out var calculation) ? calculation(text, open ?? (name => (null, $"The mesh '{name}' cannot be opened from here."))) : Answer.Refused("", $"{(what.Length == 0 ? "Name a calculation" : $"There is no calculation '{what}'")}. There are: {string.Join(", ", All.Keys)}.");
}

/// <summary>What a calculation answers.</summary>
/// <param name="ExitCode">0 with a result, 2 with errors.</param>
/// <param name="Json">The result, or <c>{"errors":[{"path","message"}]}</c>.</param>
public sealed record Answer(int ExitCode, string Json)
{
    private const int Usable = 0;
    private const int NotUsable = 2;

    /// <summary>A single error.</summary>
    public static Answer Refused(string path, string message) => new(NotUsable, Written.Errors([new InputError(path, message)]));

    /// <summary>A result or its errors.</summary>
    internal static Answer Of<T>(Outcome<T> outcome, Func<T, string> write)
        where T : class
    {
        if (!outcome.Ok)
        {
            return new Answer(NotUsable, Written.Errors(outcome.Errors));
        }

        try
        {
            return new Answer(Usable, write(outcome.Value));
        }
        catch (ArgumentException)
        {
            // JSON has no infinity, and a figure that is none is no answer
            return Refused("", "A figure came out too large to work with, so no answer is given. Look for a size, a density or an amount that is far too small or too large.");
        }
    }
}
