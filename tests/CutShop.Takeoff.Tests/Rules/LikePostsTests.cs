namespace CutShop.Takeoff.Tests.Rules;

public class LikePostsTests
{
    /// <summary>Worked out each by itself, posts that count as alike come out alike.</summary>
    [Fact]
    public void Posts_that_count_as_alike_have_the_same_findings()
    {
        var (alike, found) = (0, 0);
        foreach (var seed in Enumerable.Range(0, 250))
        {
            if (Sample.Read(RandomSite.Of(seed).ToJsonString()).Job is not { } job)
                continue;
            foreach (var line in job.Lines)
            {
                var posts = new LikePosts(line, [.. line.Rows.Select(row => new RowTakeoff(job, line, row, ShopTables.Standard).Work())]);
                RowAtPosts[] rows = [.. line.Rows.Select(row => (Row: row, Rope: row.Rope ?? job.Rope)).Select(at => new RowAtPosts(at.Row, at.Rope, ShopTables.Standard.Rack.Choose(RopeBit.DiameterFor(at.Rope), at.Rope.Across).Bit))];
                var findings = line.Posts.Select((_, i) => PostChecks.Of(line, rows, posts, i, ShopTables.Standard.Screws)).ToList();
                for (var i = 0; i < findings.Count; i++)
                {
                    for (var j = 0; j < i; j++)
                    {
                        if (!posts.Equals(i, j))
                            continue;
                        alike++;
                        found += findings[i].Sum(row => row.Length);
                        Assert.Equal(posts.GetHashCode(i), posts.GetHashCode(j));
                        Assert.Equal(findings[i].SelectMany(row => row), findings[j].SelectMany(row => row));
                    }
                }
            }
        }
        Assert.True(alike > 100 && found > 100, $"{alike} pairs of like posts with {found} findings");
    }
}
