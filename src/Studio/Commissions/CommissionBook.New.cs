using System.Data;
using System.Globalization;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Studio.Customers;
using Studio.Data;
using Studio.Settings;

namespace Studio.Commissions;

/// <summary>Noting a new enquiry.</summary>
public sealed partial class CommissionBook
{
    private const int MostTries = 6;

    /// <summary>A second send of the same words within this time is the same enquiry.</summary>
    private static readonly TimeSpan SameSend = TimeSpan.FromMinutes(10);

    /// <summary>
    /// Notes an enquiry, with a new customer where none was chosen, and gives it the year's next number.
    /// Sent twice with the same words within ten minutes it is noted once, and both sends are told the same commission.
    /// </summary>
    public Task<Saved> CreateAsync(EnquiryForm form, string by) => Saved.TryAsync(async () =>
    {
        ArgumentNullException.ThrowIfNull(form);
        if (new EnquiryValidator(clock).Validate(form) is { IsValid: false } check)
        {
            return Saved.Refused(string.Join(" ", check.Errors.Select(e => e.ErrorMessage)));
        }

        for (var attempt = 1; ; attempt++)
        {
            try
            {
                var saved = await TryCreateAsync(form, by);
                news.Tell(News.Commission, saved.Id);
                return saved;
            }
            catch (Exception e) when (attempt < MostTries && Taken(e))
            {
                // somebody was given that number in the same moment: take the next
            }
        }
    });

    // a serializable transaction is a write lock from its start in SQLite, and is checked at the commit in PostgreSQL
    private async Task<Saved> TryCreateAsync(EnquiryForm form, string by)
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        await using var transaction = await db.Database.BeginTransactionAsync(IsolationLevel.Serializable);
        if (await SentBeforeAsync(db, form) is { } before)
        {
            return Saved.Done(before);
        }

        var customer = form.CustomerId is { } known ? await db.Set<Customer>().FindAsync(known) : null;
        customer ??= db.Add(new Customer { Name = form.CustomerName.Trim(), Email = form.Email.Trim(), Phone = form.Phone.Trim(), CreatedAt = db.Now }).Entity;
        var commission = new Commission
        {
            Number = await NextNumberAsync(db),
            Customer = customer,
            Title = form.Title.Trim(),
            Remembers = form.Remembers.Trim(),
            Occasion = form.Occasion.Trim(),
            NeededBy = form.NeededBy,
            Handover = form.Handover,
            DeliveryAddress = form.Handover == "delivery" ? form.DeliveryAddress.Trim() : "",
            Notes = form.Notes.Trim(),
            CreatedAt = db.Now,
        };
        db.Add(commission);
        await db.SaveChangesAsync();
        Append(db, commission.Id, "stands", $"{customer.Name} asked for “{commission.Title}”.", by);
        await db.SaveChangesAsync();
        await transaction.CommitAsync();
        return Saved.Done(commission.Id);
    }

    private static async Task<int?> SentBeforeAsync(StudioDb db, EnquiryForm form)
    {
        var since = db.Now - SameSend;
        string name = form.CustomerName.Trim(), title = form.Title.Trim(), remembers = form.Remembers.Trim(), occasion = form.Occasion.Trim(), notes = form.Notes.Trim();
        return await db.Set<Commission>()
            .Where(c => c.CreatedAt >= since && c.Title == title && c.Remembers == remembers && c.Occasion == occasion && c.Notes == notes && c.NeededBy == form.NeededBy)
            .Where(c => c.Customer!.Name == name && (form.CustomerId == null || c.CustomerId == form.CustomerId))
            .Select(c => (int?)c.Id)
            .FirstOrDefaultAsync();
    }

    // the longest number of the year is the latest: 26-1000 comes after 26-999
    private static async Task<string> NextNumberAsync(StudioDb db)
    {
        var zone = await db.Set<StudioSettings>().Select(s => s.TimeZone).SingleOrDefaultAsync();
        var here = TimeZoneInfo.TryFindSystemTimeZoneById(zone ?? "UTC", out var found) ? found : TimeZoneInfo.Utc;
        var year = TimeZoneInfo.ConvertTimeFromUtc(DateTime.SpecifyKind(db.Now, DateTimeKind.Utc), here).ToString("yy", CultureInfo.InvariantCulture) + "-";
        var last = await db.Set<Commission>().Where(c => c.Number.StartsWith(year)).OrderByDescending(c => c.Number.Length).ThenByDescending(c => c.Number).Select(c => c.Number).FirstOrDefaultAsync();
        var running = last is not null && int.TryParse(last.AsSpan(year.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n + 1 : 1;
        return year + running.ToString("000", CultureInfo.InvariantCulture);
    }

    // SQLite 19: a constraint was broken (sqlite.org/rescode.html); PostgreSQL 23505: unique violation, 40001: serialization failure (its Appendix A)
    private static bool Taken(Exception e) => (e.InnerException ?? e) switch
    {
        SqliteException s => s.SqliteErrorCode == 19,
        PostgresException p => p.SqlState is "23505" or "40001",
        _ => false,
    };
}
