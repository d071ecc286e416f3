using System.Data;
using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Data;
using Studio.Pieces;
using Studio.Shell;

namespace Studio.Steps;

/// <summary>Where commissions stand, and every act that moves one: the one place that decides what the facts allow.</summary>
public sealed class StepBook(IDbContextFactory<StudioDb> factory, TimeProvider clock, News news)
{
    /// <summary>A reason is some words, not one letter.</summary>
    public const int LeastWhy = 3;

    /// <summary>Code of a refusal that a reason overrules.</summary>
    public const string DisagreesCode = "disagrees";

    /// <summary>Where it stands and what may come next; null when there is no such commission.</summary>
    public async Task<StepView?> ReadAsync(int commissionId)
    {
        await using var db = await factory.CreateDbContextAsync();
        return await StepReader.ReadAsync(db, commissionId, Now) is { } facts ? NextSteps.Of(facts) : null;
    }

    /// <summary>
    /// Moves a commission. What the facts speak against is refused with <see cref="DisagreesCode"/> until a reason is given; the reason stays in the history
    /// beside what disagreed.
    /// </summary>
    public Task<Saved> MoveAsync(int id, MoveForm form, string by) => MoveAsync(id, form, asks: true, by);

    /// <summary>Takes a move back: it stands where it stood, whatever the facts say of that; both moves stay written.</summary>
    public Task<Saved> UndoAsync(int id, string now, string before, string by) => MoveAsync(id, new MoveForm(now, before, Moves.TakenBack(before)), asks: false, by);

    private Task<Saved> MoveAsync(int id, MoveForm form, bool asks, string by) => Saved.TryAsync(async () =>
    {
        ArgumentNullException.ThrowIfNull(form);
        if (Standing.All.All(s => s.Key != form.To))
        {
            return Saved.Refused("There is no such place for a commission to stand. Choose one of those on the page.");
        }

        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        await using var whole = await db.Database.BeginTransactionAsync(IsolationLevel.Serializable);
        if (await StepReader.ReadAsync(db, id, Now) is not { } facts)
        {
            return Saved.Refused("This commission is not in the book. Go back to the list.");
        }

        if (facts.Stands != form.From)
        {
            return Saved.Refused($"Someone moved it meanwhile: it stands at “{Standing.Label(facts.Stands)}” now. Look again, then decide.", Saved.StaleCode);
        }

        IReadOnlyList<string> disagrees = asks || form.To == Standing.CrossedOut ? Disagreement.With(form.To, facts) : [];
        if ((asks || disagrees.Count > 0) && Refusal(form, disagrees) is { } refused)
        {
            return refused;
        }

        var commission = await db.Set<Commission>().SingleAsync(c => c.Id == id);
        commission.Stands = form.To;
        var ends = form.To is Standing.LetGo or Standing.CrossedOut;
        if (ends && asks)
        {
            // kept beyond a return, so that an undo of the return finds it; read only while it has ended
            (commission.EndedWhy, commission.EndedSpent) = (form.Why.Trim(), form.Spent);
        }

        CommissionBook.Append(db, id, "stands", Told(form, disagrees, ends, facts), by);
        await PiecesAsync(db, id, form.From, form.To);
        await db.SaveChangesAsync();
        await whole.CommitAsync();
        news.Tell(News.Commission, id);
        news.Tell(News.Piece);
        return Saved.Done(id);
    });

    /// <summary>
    /// Lets a commission follow what was done at the bench: ready once every piece is finished and fully cured, back in the making when one is not finished any more.
    /// <paramref name="wentBack"/> says that a piece went back or failed: without it nothing leads back from ready.
    /// Called after the caller's save and inside its transaction, because it reads what was saved.
    /// </summary>
    public static async Task SettleAsync(StudioDb db, int commissionId, DateTime now, bool wentBack, string by)
    {
        ArgumentNullException.ThrowIfNull(db);
        if (await StepReader.ReadAsync(db, commissionId, now) is not { } facts)
        {
            return;
        }

        if (facts.Stands == Standing.Making && Disagreement.Ready(facts).Count == 0)
        {
            await CommissionBook.MoveIfAsync(db, commissionId, Standing.Making, Standing.Ready, "Every piece is finished and fully cured.", by);
        }
        else if (wentBack && facts.Stands == Standing.Ready && Disagreement.Ready(facts).Count > 0)
        {
            await CommissionBook.MoveIfAsync(db, commissionId, Standing.Ready, Standing.Making, "A piece went back to the bench.", by);
        }

        await db.SaveChangesAsync();
    }

    private DateTime Now => clock.GetUtcNow().UtcDateTime;

    private static Saved? Refusal(MoveForm form, IReadOnlyList<string> disagrees)
    {
        var why = form.Why.Trim().Length >= LeastWhy;
        return form.To switch
        {
            Standing.CrossedOut when disagrees.Count > 0 =>
                Saved.Refused($"It cannot be crossed out as logged by mistake: {string.Join(" ", disagrees)} Give back or cross out what was logged, or let the commission go.", "no-mistake"),
            Standing.LetGo or Standing.CrossedOut when !why => Saved.Refused($"Say why it ends, in a few words; the reason is kept.{(disagrees.Count > 0 ? " " + string.Join(" ", disagrees) : "")}", DisagreesCode),
            _ when disagrees.Count > 0 && !why => Saved.Refused($"{string.Join(" ", disagrees)} To go on all the same, say why; the reason stays in the history.", DisagreesCode),
            _ => null,
        };
    }

    private static string Told(MoveForm form, IReadOnlyList<string> disagrees, bool ends, StepFacts facts)
    {
        var why = disagrees.Count > 0 || ends ? Say.Sentence(form.Why) : "";
        List<string> said =
        [
            form.Words,
            .. disagrees.Count > 0 ? ["What was open:", .. disagrees] : Array.Empty<string>(),
            .. why.Length > 0 ? ["Reason: " + why] : Array.Empty<string>(),
            .. ends && form.Spent is { } spent ? [$"Spent until then: {Say.Money(spent, facts.Money.Currency)}."] : Array.Empty<string>(),
        ];
        return string.Join(" ", said);
    }

    // finished pieces go home with their commission and come back with it; what is not finished stays what it is, and the shelf shows no piece of a commission that ended
    private static async Task PiecesAsync(StudioDb db, int commissionId, string from, string to)
    {
        if (from != Standing.Home && to != Standing.Home)
        {
            return; // what left with a parcel of its own has left, wherever the commission stands
        }

        var (was, now) = to == Standing.Home ? (Making.Finished, Making.Home) : (Making.Home, Making.Finished);
        foreach (var piece in await db.Set<Piece>().Where(p => p.CommissionId == commissionId && p.Stage == was).ToListAsync())
        {
            piece.Stage = now;
        }
    }
}
