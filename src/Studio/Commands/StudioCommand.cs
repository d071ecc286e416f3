using System.CommandLine;
using System.CommandLine.Parsing;

namespace Studio.Commands;

/// <summary>The command line: without a word it serves.</summary>
internal static class StudioCommand
{
    /// <summary>A file whose name begins with @ is a file like any other, not a list of arguments.</summary>
    public static ParserConfiguration Parsing { get; } = new() { ResponseFileTokenReplacer = null };

    public static RootCommand Create(string[] args)
    {
        var root = new RootCommand("Studio: from an enquiry to a memorial casting, with true numbers on the way.")
        {
            // settings such as --urls go on to the host
            TreatUnmatchedTokensAsErrors = false,
        };
        root.SetAction((_, cancel) => ServeCommand.RunAsync(args, demo: false, cancel));
        var demo = new Command("demo", "Open the demo studio: invented people and pieces at every stage.") { TreatUnmatchedTokensAsErrors = false };
        demo.SetAction((_, cancel) => ServeCommand.RunAsync(args, demo: true, cancel));
        root.Subcommands.Add(demo);
        root.Subcommands.Add(CalcCommand.Create());
        root.Subcommands.Add(CustodyCommand.Create());
        root.Subcommands.Add(OwnerPasswordCommand.Create());
        root.Validators.Add(parsed => RefuseStray(parsed, args, root));
        demo.Validators.Add(parsed => RefuseStray(parsed, args.Length > 0 ? args[1..] : [], root));
        return root;
    }

    /// <summary>The first word that is neither a setting (<c>--key value</c>, <c>--key=value</c>, <c>key=value</c>) nor a setting's value; null when there is none.</summary>
    internal static string? Stray(IReadOnlyList<string> args)
    {
        for (var i = 0; i < args.Count; i++)
        {
            if (args[i].StartsWith('-'))
            {
                var valueFollows = !args[i].Contains('=', StringComparison.Ordinal) && i + 1 < args.Count && !args[i + 1].StartsWith('-');
                i += valueFollows ? 1 : 0;
            }
            else if (!args[i].Contains('=', StringComparison.Ordinal))
            {
                return args[i];
            }
        }

        return null;
    }

    // a mistyped word must not open the studio in place of what was wanted
    private static void RefuseStray(CommandResult parsed, IReadOnlyList<string> args, RootCommand root)
    {
        if (Stray(args) is { } word)
        {
            parsed.AddError($"There is no command '{word}'. There are: {string.Join(", ", root.Subcommands.Select(c => c.Name).Order(StringComparer.Ordinal))}. Without a word the studio opens.");
        }
    }
}
