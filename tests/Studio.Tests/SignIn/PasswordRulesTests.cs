using Studio.Data;
using Studio.SignIn;

namespace Studio.Tests.SignIn;

/// <summary>Length and no classes of characters, and a list of common ones: OWASP ASVS 5.0, 6.2.1 to 6.2.5 (from memory). The list is our own, not its 3000.</summary>
public sealed class PasswordRulesTests
{
    private static readonly PasswordOf Whose = new("Ling & Larch Castings", "Wren Underhill", "wren.underhill@studio.example");

    [Theory]
    [InlineData("copper kettle moon")]
    [InlineData("ALL IN CAPITALS AND NO DIGIT")]
    [InlineData("Ω≈ç√∫˜µ≤≥÷ 12 öäü")]
    [InlineData("heather and brass")]
    [InlineData(IDemo.Password)]
    [InlineData("wren likes kettles")]
    public void A_long_one_that_nobody_tries_first_will_do(string password) => PasswordRules.Wrong(password, Whose).ShouldBeNull();

    [Theory]
    [InlineData("eleven char", "twelve")]
    [InlineData("", "twelve")]
    [InlineData("password1234", "tried first")]
    [InlineData("P@ssw0rd2026!!", "tried first")]
    [InlineData("Sunshine2026!!", "tried first")]
    [InlineData("iloveyouforever", "tried first")]
    [InlineData("letmeinplease", "tried first")]
    [InlineData("I love you forever", "tried first")]
    [InlineData("correct horse battery staple", "tried first")]
    [InlineData("elizabeth1987", "tried first")]
    [InlineData("passwordpassword", "repeats")]
    [InlineData("aaaaaaaaaaaa", "repeats")]
    [InlineData("abcabcabcabc", "repeats")]
    [InlineData("bench bench bench", "repeats")]
    [InlineData("121212121212", "repeats")]
    [InlineData("123456789012", "repeats")]
    [InlineData("abcdefghijklm", "repeats")]
    [InlineData("qwertyuiopasdf", "repeats")]
    [InlineData("poiuytrewqlkj", "repeats")]
    [InlineData("Ling & Larch Castings", "called")]
    [InlineData("ling&larch-castings", "called")]
    [InlineData("LingLarchCastings1", "called")]
    [InlineData("Wren Underhill", "called")]
    [InlineData("wren.underhill@studio.example", "called")]
    [InlineData("wrenunderhill2026", "called")]
    public void One_that_is_tried_first_will_not(string password, string why) => PasswordRules.Wrong(password, Whose).ShouldNotBeNull().ShouldContain(why);

    [Fact]
    public void Up_to_128_characters_may_be_typed()
    {
        var words = string.Join(' ', Enumerable.Range(100, 40).Select(n => $"moss {n}"))[..128];
        PasswordRules.Wrong(words).ShouldBeNull();
        PasswordRules.Wrong(words + "x").ShouldNotBeNull().ShouldContain("128");
    }
}
