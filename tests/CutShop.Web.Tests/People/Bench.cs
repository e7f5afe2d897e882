namespace CutShop.Web.Tests.People;

/// <summary>A tablet at a bench.</summary>
public static class Bench
{
    /// <summary>A client with the cookies of a newly enrolled tablet, nobody signed in.</summary>
    public static async Task<HttpClient> EnrolAsync(RunningShop shop)
    {
        var tablet = await shop.SignInAsync(CutShop.Shop.People.Role.Desk, follow: false);
        using var enrolled = await tablet.SendFormAsync("/tablets?handler=Enrol", ("name", "Bench 1"));
        Assert.Equal("/sign-in", enrolled.Headers.Location!.OriginalString);
        return tablet;
    }
}
