using Studio.Data.Files;

namespace Studio.Film;

/// <summary>The steps a picture's recipe has taken on this page, to go back and forth between them.</summary>
public sealed class RecipeHistory(PictureRecipe first)
{
    private readonly List<PictureRecipe> steps = [first];
    private int at;

    /// <summary>The step that counts now.</summary>
    public PictureRecipe Now => steps[at];

    public bool CanUndo => at > 0;

    public bool CanRedo => at < steps.Count - 1;

    /// <summary>Takes a new step; what was undone before it is forgotten. The same recipe again is no step.</summary>
    public void Take(PictureRecipe next)
    {
        if (next != Now)
        {
            steps.RemoveRange(at + 1, steps.Count - at - 1);
            steps.Add(next);
            at++;
        }
    }

    /// <summary>One step back.</summary>
    public PictureRecipe Undo() => steps[at = Math.Max(0, at - 1)];

    /// <summary>One step forward again.</summary>
    public PictureRecipe Redo() => steps[at = Math.Min(steps.Count - 1, at + 1)];
}
