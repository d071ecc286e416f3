using System.Net;
using Studio.SignIn;

namespace Studio.Tests.SignIn;

public sealed class NetworkTests
{
    // addresses of RFC 5737 and RFC 3849, which are nobody's
    [Theory]
    [InlineData("203.0.113.77", "203.0.113.0/24", "203.0.113.77/32")]
    [InlineData("::ffff:203.0.113.77", "203.0.113.0/24", "203.0.113.77/32")]
    [InlineData("2001:db8:1234:5678:9abc::1", "2001:db8:1234::/48", "2001:db8:1234:5678::/64")]
    [InlineData("127.0.0.1", "127.0.0.0/24", "127.0.0.1/32")]
    public void An_address_is_shortened_to_its_network(string address, string shortened, string exact)
    {
        Network.Shortened(IPAddress.Parse(address)).ShouldBe(shortened);
        Network.Exact(IPAddress.Parse(address)).ShouldBe(exact);
    }

    [Fact]
    public void No_address_is_no_network() => Network.Shortened(null).ShouldBe("");

    // strings of the kinds that browsers send, written from memory
    [Theory]
    [InlineData("Mozilla/5.0 (X11; Linux x86_64; rv:128.0) Gecko/20100101 Firefox/128.0", "Firefox on Linux")]
    [InlineData("Mozilla/5.0 (Linux; Android 10; K) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/126.0.0.0 Mobile Safari/537.36", "Chrome on Android")]
    [InlineData("Mozilla/5.0 (iPhone; CPU iPhone OS 17_5 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/17.5 Mobile/15E148 Safari/604.1", "Safari on iPhone")]
    [InlineData("Mozilla/5.0 (Windows NT 10.0; Win64; x64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/126.0.0.0 Safari/537.36 Edg/126.0.0.0", "Edge on Windows")]
    [InlineData("curl/8", "a device that does not say what it is")]
    [InlineData("", "a device that does not say what it is")]
    [InlineData("<script>alert(1)</script> Linux", "a browser on Linux")]
    public void A_device_is_said_in_a_few_words_of_ours(string agent, string words) => Device.Words(agent).ShouldBe(words);
}
