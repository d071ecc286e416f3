using Studio.Pieces;

namespace Studio.Tests.Pieces;

/// <summary>An Enter right behind the last key, while the list still shows what fits the key before.</summary>
public sealed class TypedNameTests
{
    [Fact]
    public void The_last_letter_counts_though_the_list_has_not_heard_it()
    {
        var name = Typed("queen", "queen c", "queen ca", "queen cag");
        name.Offer(["queen cag"]);
        name.Type("queen cage");
        name.Type("queen cag"); // the field shows the offer that Enter chose
        name.Of("queen cag").ShouldBe("queen cage");
    }

    [Fact]
    public void A_letter_taken_back_counts_too()
    {
        var name = Typed("keys");
        name.Offer(["keys"]);
        name.Type("key");
        name.Of("keys").ShouldBe("key");
    }

    [Fact]
    public void What_was_chosen_and_not_typed_is_taken_as_it_is()
    {
        var name = Typed("ke");
        name.Offer(["brass key", "ke"]);
        name.Of("brass key").ShouldBe("brass key");
    }

    private static TypedName Typed(params string[] texts)
    {
        var name = new TypedName();
        foreach (var text in texts)
        {
            name.Type(text);
        }

        return name;
    }
}
