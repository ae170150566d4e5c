using System.Text;
using Ramwright.Records.House;
using Ramwright.Records.Ids;

namespace Ramwright.App.Stations.Arrive;

/// <summary>Makes the id of a customer from the name.</summary>
public static class CustomerIds
{
    /// <summary>Lower case, hyphens for everything that is neither letter nor digit of ASCII; null when nothing is left.</summary>
    public static CustomerId? Of(string name)
    {
        var to = new StringBuilder();
        foreach (var c in name.ToLowerInvariant())
        {
            if (char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c))
                to.Append(c);
            else if (to.Length > 0 && to[^1] != '-')
                to.Append('-');
        }

        var text = to.ToString();
        return CustomerId.TryParse((text.Length > 40 ? text[..40] : text).Trim('-'), out var id) ? id : null;
    }

    /// <summary>The customer of that name in the house's register; names are compared without regard to case.</summary>
    public static CustomerRegistered? Known(HouseState house, string name) =>
        house.CustomersById.Values.FirstOrDefault(c => string.Equals(c.Name, name, StringComparison.OrdinalIgnoreCase));
}
