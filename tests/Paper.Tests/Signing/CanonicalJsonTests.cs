using System.Text;
using System.Text.Json.Nodes;
using CsCheck;
using Ramwright.Paper.Signing;

namespace Ramwright.Paper.Tests.Signing;

public sealed class CanonicalJsonTests
{
    // RFC 8785, 3.2.2 and 3.2.3: the sample object and its canonical form (from memory).
    [Fact]
    public void The_sample_of_the_standard_comes_out_as_printed()
    {
        var sample = CanonicalJson.Read("""
            {
              "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
              "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
              "literals": [null, true, false]
            }
            """u8);
        Assert.Equal("""{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}""", Encoding.UTF8.GetString(CanonicalJson.Write(sample)));
    }

    // RFC 8785, appendix B: doubles by their bits (from memory).
    [Theory]
    [InlineData(0x0000000000000000, "0")]
    [InlineData(unchecked((long)0x8000000000000000), "0")]
    [InlineData(0x0000000000000001, "5e-324")]
    [InlineData(0x7fefffffffffffff, "1.7976931348623157e+308")]
    [InlineData(0x4340000000000000, "9007199254740992")]
    [InlineData(0x4430000000000000, "295147905179352830000")]
    [InlineData(0x44b52d02c7e14af5, "9.999999999999997e+22")]
    [InlineData(0x444b1ae4d6e2ef4f, "999999999999999900000")]
    [InlineData(0x444b1ae4d6e2ef50, "1e+21")]
    [InlineData(0x3eb0c6f7a0b5ed8d, "0.000001")]
    [InlineData(0x3eb0c6f7a0b5ed8c, "9.999999999999997e-7")]
    [InlineData(unchecked((long)0xbecbf647612f3696), "-0.0000033333333333333333")]
    public void A_number_is_written_as_a_browser_writes_it(long bits, string printed) => Assert.Equal(printed, CanonicalJson.Number(BitConverter.Int64BitsToDouble(bits)));

    [Fact]
    public void Any_number_reads_back_as_itself() => Gen.Double.Where(d => double.IsFinite(d)).ForAll(
        d => double.Parse(CanonicalJson.Number(d), System.Globalization.CultureInfo.InvariantCulture).Equals(d));

    [Fact]
    public void A_member_named_twice_is_no_document()
    {
        Assert.Null(CanonicalJson.Read("""{"a":1,"a":2}"""u8));
        Assert.Null(CanonicalJson.Read("[1]"u8));
        Assert.Null(CanonicalJson.Read("{"u8));
        Assert.Equal("{\"\\u0001\":[]}", Encoding.UTF8.GetString(CanonicalJson.Write(new JsonObject { ["\u0001"] = new JsonArray() })));
    }
}
