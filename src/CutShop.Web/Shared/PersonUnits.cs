using CutShop.Paper.Words;
using CutShop.Shop.Orders;
using CutShop.Takeoff.Lengths;

namespace CutShop.Web.Shared;

/// <summary>Which unit leads on a page: the choice of the person who is signed in, else that of the shop's paper.</summary>
public static class PersonUnits
{
    /// <summary>The unit that leads for whoever asks.</summary>
    public static UnitsFirst UnitsOf(HttpContext context) => PaperFor(context).Units;

    /// <summary>A length as whoever asks typed it: a bare number is in the unit that leads on the page, inches or millimetres.</summary>
    public static Parsed<Length> Read(HttpContext context, string typed) =>
        LengthText.Parse(typed, bareUnit: TypedLength.UnitOf(UnitFor(context)));

    /// <summary>The unit that <see cref="Read"/> takes for a bare number, by its name.</summary>
    public static string BareUnit(HttpContext context) => HostWords.T[TypedLength.Units[UnitFor(context)]];

    /// <summary>The shop's paper settings with the units of whoever asks, for drawings and sheets on screen.</summary>
    public static PaperSettings PaperFor(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        var shop = context.RequestServices.GetRequiredService<PaperSettings>();
        return SignedIn.PersonOf(context)?.MillimetresFirst switch
        {
            true => shop with { Units = UnitsFirst.Millimetres },
            false => shop with { Units = UnitsFirst.FeetInches },
            null => shop,
        };
    }

    private static string UnitFor(HttpContext context) => UnitsOf(context) == UnitsFirst.FeetInches ? "in" : "mm";
}
