using System.Globalization;

namespace CutShop.Takeoff.Tests;

public sealed class HostileCultureTests
{
    /// <summary>The culture of a run is what LC_ALL names, if this machine knows cultures at all; or its pass in tests/run proves nothing.</summary>
    [Fact]
    public void A_run_in_a_hostile_culture_writes_numbers_and_dates_in_it()
    {
        if (Environment.GetEnvironmentVariable("LC_ALL") != "ar_SA.UTF-8")
            return;
        Assert.Equal("ar-SA", CultureInfo.CurrentCulture.Name);
        Assert.NotEqual("1.5", 1.5.ToString(CultureInfo.CurrentCulture));
        Assert.NotEqual("2027", new DateOnly(2027, 3, 12).ToString("yyyy", CultureInfo.CurrentCulture));
    }
}
