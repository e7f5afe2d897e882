using CsCheck;

namespace CutShop.Paper.Tests.Drawings;

public sealed class SpreadTests
{
    [Fact]
    public void Labels_with_room_stay_where_they_are_wanted() => Assert.Equal([1.0, 5, 9], Spread.Apart([1, 5, 9], 3, 0, 10));

    [Fact]
    public void Labels_that_would_touch_move_apart() => Assert.Equal([4.0, 7, 10], Spread.Apart([4, 5, 9.5], 3, 0, 10));

    [Fact]
    public void Labels_keep_their_order_their_bounds_and_their_distance_where_there_is_room() =>
        Gen.Double[0, 100].Array[1, 60].Sample(wanted =>
        {
            Array.Sort(wanted);
            var places = Spread.Apart(wanted, 3, 0, 100);
            var apart = Math.Min(3, 100.0 / Math.Max(wanted.Length - 1, 1));
            Assert.All(places, place => Assert.InRange(place, -1e-9, 100 + 1e-9));
            for (var i = 1; i < places.Length; i++)
                Assert.True(places[i] - places[i - 1] >= apart - 1e-9);
        });
}
