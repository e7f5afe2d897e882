using CutShop.Shop.Orders;
using CutShop.Shop.People;
using CutShop.Shop.Site;
using CutShop.Shop.Stock;
using CutShop.Shop.Store;
using CutShop.Web.Shared;

using static CutShop.Web.Jobs.JobWords;

namespace CutShop.Web.Jobs;

/// <summary>Something that a fresh shop sets up.</summary>
/// <param name="Name">What.</param>
/// <param name="Address">Where.</param>
/// <param name="About">What for.</param>
/// <param name="IsDone">True once it is set up.</param>
public sealed record SetUpStep(string Name, string Address, string About, bool IsDone);

/// <summary>What a fresh shop sets up next, on its owner's first page until all of it is done.</summary>
public static class SetUpSteps
{
    /// <summary>The steps; none for who may not take them all, and none once all are done.</summary>
    public static IReadOnlyList<SetUpStep> For(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        if (!Rights.Do(context, Rights.ChangeSettings) || !Rights.Do(context, Rights.ManagePeople))
            return [];
        var shop = context.RequestServices;
        var people = shop.GetRequiredService<PeopleShelf>();
        SetUpStep[] steps =
        [
            new(T["SetUpPrices"], "/prices", T["SetUpPricesAbout"], shop.GetRequiredService<PriceBook>().From(DateOnly.MinValue).Count > 0),
            new(T["SetUpCoils"], "/stock", T["SetUpCoilsAbout"], shop.GetRequiredService<CoilShelf>().InHand().Count > 0),
            new(T["SetUpLetterhead"], "/settings/letterhead", T["SetUpLetterheadAbout"], shop.GetRequiredService<LetterheadShelf>().Current.Name.Length > 0),
            new(T["SetUpAddress"], "/settings/address", T["SetUpAddressAbout"], shop.GetRequiredService<LabelAddressShelf>().Current is not null),
            new(T["SetUpPeople"], "/people", T["SetUpPeopleAbout"], people.All().Count(person => person.IsActive) > 1),
        ];
        return steps.All(step => step.IsDone) ? [] : steps;
    }
}
