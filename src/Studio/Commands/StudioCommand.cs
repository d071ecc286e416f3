using System.CommandLine;

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
        return root;
    }
}
