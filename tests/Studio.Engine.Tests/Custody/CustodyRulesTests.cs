using Studio.Engine.Custody;

namespace Studio.Engine.Tests.Custody;

public sealed class CustodyRulesTests
{
    /// <summary>One row a permission: may the thing be cast, may a copy, does the original return, and what stands on form, receipt and quote.</summary>
    public static TheoryData<string, bool, bool, bool, string, string, string> Cases => new()
    {
        { "embed-all", true, true, false, "Cast all of it", "All of it may be cast in resin.", "set into the piece" },
        { "embed-part", true, true, true, "Cast a part, return the rest", "A part may be cast in resin; the rest goes back to you.", "a part is set into the piece, the rest comes back to you" },
        { "copy-return", false, true, true, "Copy it, return the original", "A copy may be cast in resin; the original goes back to you.", "copied, and the original comes back to you" },
        { "return-untouched", false, false, true, "Return untouched", "It goes back to you untouched.", "comes back to you untouched" },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void Each_permission_says_and_allows_what_it_is(string key, bool thing, bool copy, bool returns, string form, string receipt, string quote)
    {
        var rule = Permissions.For(key);
        (rule.Known, rule.ThingMayBeCast, rule.CopyMayBeCast, rule.OriginalReturns).ShouldBe((true, thing, copy, returns));
        (rule.OnForm, rule.OnReceipt, rule.OnQuote).ShouldBe((form, receipt, quote));
        (CustodyRules.Refusal(CustodyKind.SetIn, new("brass", key), Here(3, 30)) is null).ShouldBe(thing);
        (CustodyRules.Refusal(CustodyKind.Copied, new("brass", key), Here(3, 30)) is null).ShouldBe(copy);
        CustodyRules.Refusal(CustodyKind.Returned, new("brass", key), Here(3, 30)).ShouldBeNull("what is theirs can always go back");
    }

    [Fact]
    public void Every_permission_has_its_row_of_cases() => Permissions.All.Select(p => p.Key).ShouldBe(Cases.Select(c => c.Data.Item1));

    [Theory]
    [InlineData("")]
    [InlineData(null)]
    [InlineData("scatter-at-sea")]
    public void A_permission_that_nobody_knows_refuses_everything_and_says_so(string? key)
    {
        var rule = Permissions.For(key);
        (rule.Known, rule.ThingMayBeCast, rule.CopyMayBeCast, rule.OriginalReturns).ShouldBe((false, false, false, true));
        foreach (var words in new[] { rule.OnForm, rule.OnReceipt, rule.OnQuote, rule.Beyond })
        {
            words.ShouldNotContain("untouched");
        }

        rule.OnReceipt.ShouldContain("not known");
        foreach (var kind in new[] { CustodyKind.SetIn, CustodyKind.CopySetIn, CustodyKind.Copied, CustodyKind.Prepared, CustodyKind.Divided, CustodyKind.Used })
        {
            CustodyRules.Refusal(kind, new("brass", key ?? ""), Here(3, 30))?.Code.ShouldBe("not-permitted", kind);
        }
    }

    [Fact]
    public void A_material_that_nobody_knows_is_not_cast()
    {
        MaterialRules.For("moon-rock").NeverEmbed.ShouldBeTrue();
        CustodyRules.Refusal(CustodyKind.SetIn, new("moon-rock", "embed-all"), Here(1, 5))?.Code.ShouldBe("material");
    }

    [Fact]
    public void The_whole_is_never_taken_for_a_part()
    {
        var subject = new CustodySubject("ashes", "embed-part");
        Refused(subject, Here(1, 200), count: 1, grams: 200).ShouldBe("more-than-permitted");
        Refused(subject, Here(1, 200), count: 0, grams: 200).ShouldBe("more-than-permitted");
        Refused(subject, Here(12, null), count: 12, grams: null).ShouldBe("more-than-permitted");
        Refused(subject, Here(1, 200), count: 0, grams: 40).ShouldBeNull();
        Refused(subject, Here(12, null), count: 5, grams: null).ShouldBeNull();
        CustodyRules.Offer(subject, Here(1, 200)).ShouldBe(new CustodyAmount(0, null), "nobody said how much, so it is asked");
    }

    [Fact]
    public void More_than_the_family_named_is_refused_in_the_permissions_words()
    {
        var subject = new CustodySubject("ashes", "embed-part") { PartG = 40 };
        CustodyRules.Offer(subject, Here(1, 200)).ShouldBe(new CustodyAmount(0, 40));
        var refused = CustodyRules.Refusal(new CustodyAct(CustodyKind.SetIn) { MassG = 41 }, subject, Here(1, 200)).ShouldNotBeNull();
        refused.Path.ShouldBe("massG");
        refused.Message.ShouldContain("The family permits 40.0 g");
        refused.Message.ShouldContain(Permissions.For("embed-part").Beyond);
        var half = CustodyLedger.Read([.. Entries(1, 200), new(2, CustodyKind.SetIn) { Count = 0, MassG = 30 }]);
        Refused(subject, half, 0, 11).ShouldBe("more-than-permitted", "with what is in the piece already");
        CustodyRules.Offer(subject, half).ShouldBe(new CustodyAmount(0, 10));
    }

    [Fact]
    public void An_amount_is_asked_for_and_never_guessed()
    {
        var subject = new CustodySubject("hair", "embed-part");
        Refused(subject, Here(1, 4), 0, null).ShouldBe("amount-missing");
        CustodyRules.Refusal(new CustodyAct(CustodyKind.SetIn) { Unweighed = true }, subject, Here(1, null)).ShouldBeNull("said to be unweighed");
        Refused(subject, Here(1, 4), 0, 5).ShouldBe("more-than-held");
        Refused(subject, Here(1, 4), 2, null).ShouldBe("more-than-held");
        Refused(subject, Here(1, 4), -1, null).ShouldBe("amount-wrong");
    }

    [Fact]
    public void The_only_photograph_is_cast_only_where_the_owner_overruled_and_a_battery_never()
    {
        CustodyRules.Refusal(CustodyKind.SetIn, new("photograph-only-copy", "embed-all"), Here(1, null))?.Code.ShouldBe("material");
        CustodyRules.Refusal(CustodyKind.SetIn, new("photograph-only-copy", "embed-all") { Overruled = true }, Here(1, null)).ShouldBeNull();
        CustodyRules.Refusal(CustodyKind.SetIn, new("battery", "embed-all") { Overruled = true }, Here(1, null))?.Code.ShouldBe("material");
    }

    [Fact]
    public void What_is_gone_says_where_it_is()
    {
        Refusal(CustodyKind.Returned, 1).Code.ShouldBe("gone-back");
        Refusal(CustodyKind.SetIn, 1).Code.ShouldBe("all-cast");
        Refusal(CustodyKind.Lost, 1).Code.ShouldBe("lost");
        Refusal(CustodyKind.Used, 1).Code.ShouldBe("used-up");
        Refusal(CustodyKind.Withdrawn, 0).Code.ShouldBe("withdrawn");

        static InputError Refusal(string kind, int count) =>
            CustodyRules.Refusal(CustodyKind.Moved, new("brass", "embed-all"), CustodyLedger.Read([.. Entries(1, null), new(2, kind) { Count = count }])).ShouldNotBeNull();
    }

    private static string? Refused(CustodySubject subject, CustodyState now, int count, double? grams) =>
        CustodyRules.Refusal(new CustodyAct(CustodyKind.SetIn) { Count = count, MassG = grams }, subject, now)?.Code;

    private static CustodyState Here(int count, double? grams) => CustodyLedger.Read(Entries(count, grams));

    private static CustodyEntry[] Entries(int count, double? grams) => [new(1, CustodyKind.Received) { Count = count, MassG = grams, Place = "drawer 1" }];
}
