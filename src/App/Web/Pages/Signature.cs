using Ramwright.Records.Ids;

namespace Ramwright.App.Web.Pages;

/// <summary>Who signs, against what.</summary>
/// <param name="Token">Made when the form was drawn: sent twice, it counts once.</param>
/// <param name="Seen">The version of the job on which the form was drawn; null takes whatever stands.</param>
public sealed record Signature(SubmitToken Token, PersonId By, EntryNumber? Seen = null)
{
    /// <summary>For a further entry that belongs to the same form, such as a new customer with a new job.</summary>
    /// <param name="part">1, 2, 3 ... 65,535: always the same for the same further entry.</param>
    public Signature ForPart(ushort part)
    {
        Span<byte> bytes = stackalloc byte[16];
        Token.Value.TryWriteBytes(bytes);
        bytes[15] ^= (byte)part;
        bytes[14] ^= (byte)(part >> 8);
        return this with { Token = new(new Guid(bytes)), Seen = null };
    }
}
