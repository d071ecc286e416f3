using Studio.Commands;

return await StudioCommand.Create(args).Parse(args, StudioCommand.Parsing).InvokeAsync();

/// <summary>The entry point, named so that tests can start the same program.</summary>
public partial class Program;
