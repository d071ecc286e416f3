using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Data;
using Studio.Pieces;
using Studio.Quotes;
using Studio.Settings;
using Studio.Shell;

namespace Studio.Money;

/// <summary>All reads and writes of money that came.</summary>
public sealed class MoneyBook(IDbContextFactory<StudioDb> factory, TimeProvider clock, SettingsBook settings, News news)
{
    /// <summary>A commission's money.</summary>
    public async Task<CommissionMoney> ReadAsync(int commissionId)
    {
        await using var db = await factory.CreateDbContextAsync();
        return await OfAsync(db, commissionId, (await settings.ReadAsync()).Currency);
    }

    /// <summary>A commission's money, read in the caller's context.</summary>
    /// <param name="currency">The studio's own, for a commission without any.</param>
    public static async Task<CommissionMoney> OfAsync(StudioDb db, int commissionId, string currency) => (await OfAsync(db, [commissionId], currency))[commissionId];

    /// <summary>The money of many commissions at once. Amounts are ten-thousandths in the database, so they are added up here and not by it.</summary>
    public static async Task<IReadOnlyDictionary<int, CommissionMoney>> OfAsync(StudioDb db, IReadOnlyCollection<int> commissionIds, string currency)
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(commissionIds);
        if (commissionIds.Count == 0)
        {
            return new Dictionary<int, CommissionMoney>();
        }

        var payments = (await db.Set<Payment>().AsNoTracking().Where(p => commissionIds.Contains(p.CommissionId)).OrderBy(p => p.PaidAt).ThenBy(p => p.Id).ToListAsync())
            .ToLookup(p => p.CommissionId, p => new MoneyEntry(p.Id, p.PaidAt, p.Kind, p.Amount, p.Currency, p.How, p.By, p.Withdrawn));
        var inPlaceOf = await db.Set<Piece>().Where(p => commissionIds.Contains(p.CommissionId) && p.InPlaceOf != null).ToDictionaryAsync(p => p.Id, p => p.InPlaceOf!.Value);

        // one price a piece counts: the newest that was agreed, and that of a piece in another's place for both
        var accepted = (await db.Set<Quote>().AsNoTracking().Where(q => commissionIds.Contains(q.CommissionId) && q.State == QuoteState.Accepted).OrderByDescending(q => q.VersionNo)
                .Select(q => new { q.CommissionId, q.PieceId, q.Currency, q.Result }).ToListAsync())
            .Where(q => q.Result is not null).DistinctBy(q => First(q.PieceId, inPlaceOf)).ToLookup(q => q.CommissionId);
        return commissionIds.Distinct().ToDictionary(id => id, id =>
        {
            var came = payments[id].ToList();
            var ours = accepted[id].FirstOrDefault()?.Currency ?? came.Find(p => !p.Withdrawn)?.Currency ?? currency;
            var counted = accepted[id].Where(q => q.Currency == ours).ToList();
            return new CommissionMoney(ours, counted.Count == 0 ? null : counted.Sum(q => q.Result!.Total), counted.Sum(q => q.Result!.Deposit), came.Where(p => !p.Withdrawn && p.Currency == ours).Sum(p => p.Amount), came);
        });
    }

    private static string Came(CommissionMoney money, decimal amount) => (money.Paid + amount - money.Deposit) switch
    {
        < 0 => "A part of the deposit",
        0 when money.Paid == 0 => "The deposit",
        _ => "A payment",
    };

    private static int First(int piece, Dictionary<int, int> inPlaceOf)
    {
        for (var steps = 0; steps < inPlaceOf.Count && inPlaceOf.TryGetValue(piece, out var before); steps++)
        {
            piece = before;
        }

        return piece;
    }

    /// <summary>Money came. The same form twice adds nothing; more than is owed is refused.</summary>
    public Task<Saved> PayAsync(int commissionId, PaymentForm form, string by) => Saved.TryAsync(async () =>
    {
        ArgumentNullException.ThrowIfNull(form);
        if (new PaymentValidator().Validate(form) is { IsValid: false } check)
        {
            return Saved.Refused(string.Join(" ", check.Errors.Select(e => e.ErrorMessage)));
        }

        await using var db = await factory.CreateDbContextAsync();
        db.By = by;

        // what is owed is read and written under one lock: two tablets must not both note the last pound
        await using var whole = await db.Database.BeginTransactionAsync(System.Data.IsolationLevel.Serializable);
        if (await db.Set<Payment>().AnyAsync(p => p.SubmitKey == form.SubmitKey))
        {
            return Saved.Done(commissionId);
        }

        var money = await OfAsync(db, commissionId, (await settings.ReadAsync()).Currency);
        if (money.Agreed is not { } agreed)
        {
            return Saved.Refused("No price is agreed yet, so there is nothing to pay towards. Note their yes on the price first.", "nothing-agreed");
        }

        if (form.Amount > money.Left)
        {
            return Saved.Refused($"That is more than they owe: {Say.Money(money.Left, money.Currency)} of {Say.Money(agreed, money.Currency)} is still to come. Check the amount.", "more-than-owed");
        }

        db.Add(new Payment { CommissionId = commissionId, Kind = money.NextKind, Amount = form.Amount!.Value, Currency = money.Currency, PaidAt = clock.GetUtcNow().UtcDateTime, How = form.How, By = by, SubmitKey = form.SubmitKey });
        CommissionBook.Append(db, commissionId, "payment", $"{Came(money, form.Amount.Value)} of {Say.Money(form.Amount.Value, money.Currency)} came {form.How}.", by);
        await db.SaveChangesAsync();
        await whole.CommitAsync();
        news.Tell(News.Commission, commissionId);
        return Saved.Done(commissionId);
    });

    /// <summary>Takes a payment's entry back; it stays in the story.</summary>
    public Task<Saved> UnpayAsync(int paymentId, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        await using var whole = await db.Database.BeginTransactionAsync(System.Data.IsolationLevel.Serializable);
        var payment = await db.Set<Payment>().SingleAsync(p => p.Id == paymentId);
        if (!payment.Withdrawn)
        {
            payment.Withdrawn = true;
            CommissionBook.Append(db, payment.CommissionId, "payment", $"The entry of {Say.Money(payment.Amount, payment.Currency)} was taken back.", by);
            await db.SaveChangesAsync();
            await whole.CommitAsync();
            news.Tell(News.Commission, payment.CommissionId);
        }

        return Saved.Done(paymentId);
    });
}
