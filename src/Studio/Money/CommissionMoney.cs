namespace Studio.Money;

/// <summary>What was agreed, what was paid, and what is left.</summary>
/// <param name="Currency">ISO 4217; of the accepted price, else of what was paid, else the studio's.</param>
/// <param name="Agreed">The accepted prices together; null while none is accepted.</param>
/// <param name="Deposit">What was asked for in advance.</param>
/// <param name="Paid">What came and was not taken back.</param>
/// <param name="Payments">Every entry, the oldest first.</param>
public sealed record CommissionMoney(string Currency, decimal? Agreed, decimal Deposit, decimal Paid, IReadOnlyList<MoneyEntry> Payments)
{
    /// <summary>Still to pay; 0 when too much was paid, or where nothing is agreed.</summary>
    public decimal Left => Math.Max(0, (Agreed ?? Paid) - Paid);

    /// <summary>Paid beyond what was agreed; 0 where nothing is agreed.</summary>
    public decimal TooMuch => Math.Max(0, Paid - (Agreed ?? Paid));

    /// <summary>What to offer as the next amount: the deposit while it is open, else what is left; null where nothing is.</summary>
    public decimal? Next => (Agreed, Left) switch
    {
        (null, _) or (_, 0) => null,
        _ when Paid < Deposit => Deposit - Paid,
        _ => Left,
    };

    /// <summary>What the next payment is: the deposit until it is all there.</summary>
    public string NextKind => Paid < Deposit ? "deposit" : "balance";
}

/// <summary>One payment.</summary>
/// <param name="At">When it was noted [UTC].</param>
/// <param name="Withdrawn">True where the entry was taken back; it stays readable.</param>
public sealed record MoneyEntry(int Id, DateTime At, string Kind, decimal Amount, string Currency, string How, string By, bool Withdrawn);
