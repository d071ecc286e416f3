using Microsoft.EntityFrameworkCore;
using Studio.Data;

namespace Studio.Customers;

/// <summary>One line of the customers' ledger.</summary>
public sealed record CustomerLine(int Id, string Name, string Email, string Phone);

/// <summary>A page of the ledger.</summary>
/// <param name="Lines">In the order of the alphabet.</param>
/// <param name="More">True when there are further ones.</param>
/// <param name="Any">True when there is any customer at all.</param>
public sealed record CustomerList(IReadOnlyList<CustomerLine> Lines, bool More, bool Any);

/// <summary>Reads and writes customers.</summary>
public sealed class CustomerBook(IDbContextFactory<StudioDb> factory, News news)
{
    /// <summary>What differs between two versions is said with these names.</summary>
    public static IReadOnlyDictionary<string, string> Labels { get; } = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        [nameof(Customer.Name)] = "Name",
        [nameof(Customer.Email)] = "E-mail",
        [nameof(Customer.Phone)] = "Telephone",
        [nameof(Customer.Address)] = "Address",
        [nameof(Customer.Notes)] = "Notes",
    };

    /// <summary>The customers in whose name, e-mail, telephone number or address every typed word stands.</summary>
    public async Task<CustomerList> ListAsync(string search, int take)
    {
        await using var db = await factory.CreateDbContextAsync();
        var lines = await Matches(db, search).OrderBy(c => c.Name).ThenBy(c => c.Id).Take(take + 1).Select(c => new CustomerLine(c.Id, c.Name, c.Email, c.Phone)).ToListAsync();
        return new CustomerList([.. lines.Take(take)], lines.Count > take, lines.Count > 0 || await db.Set<Customer>().AnyAsync());
    }

    /// <summary>One customer; null when there is no such number.</summary>
    public async Task<Customer?> ReadAsync(int id)
    {
        await using var db = await factory.CreateDbContextAsync();
        return await db.Set<Customer>().AsNoTracking().SingleOrDefaultAsync(c => c.Id == id);
    }

    /// <summary>Adds one, or saves an edited one; refused when somebody else saved since it was read.</summary>
    public Task<Saved> SaveAsync(Customer customer, string by) => Saved.TryAsync(async () =>
    {
        Tidy(customer);
        if (new CustomerValidator().Validate(customer) is { IsValid: false } check)
        {
            return Saved.Refused(string.Join(" ", check.Errors.Select(e => e.ErrorMessage)));
        }

        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        customer.CreatedAt = customer.Id == 0 ? db.Now : customer.CreatedAt;
        var stored = customer.Id == 0 ? db.Add(customer).Entity : await db.OverwriteAsync(customer);
        await db.SaveChangesAsync();
        customer.Version = stored.Version;
        news.Tell(News.Commission);
        return Saved.Done(customer.Id);
    });

#pragma warning disable CA1304, CA1311, CA1862, MA0011 // lower() runs in the database, which has no culture
    private static IQueryable<Customer> Matches(StudioDb db, string search)
    {
        var found = db.Set<Customer>().AsNoTracking();
        foreach (var pattern in Matching.Patterns(search))
        {
            found = found.Where(c => EF.Functions.Like((c.Name + " " + c.Email + " " + c.Phone + " " + c.Address).ToLower(), pattern, Matching.Escape));
        }

        return found;
    }
#pragma warning restore CA1304, CA1311, CA1862, MA0011

    private static void Tidy(Customer customer)
    {
        customer.Name = customer.Name.Trim();
        customer.Email = customer.Email.Trim();
        customer.Phone = customer.Phone.Trim();
        customer.Address = customer.Address.Trim();
        customer.Notes = customer.Notes.Trim();
    }
}
