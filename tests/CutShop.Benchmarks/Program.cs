using CutShop.Benchmarks;
using CutShop.Benchmarks.Against;
using CutShop.Benchmarks.Benches;
using CutShop.Benchmarks.Cutting;
using CutShop.Benchmarks.Desk;
using CutShop.Benchmarks.Labels;
using CutShop.Benchmarks.OnSite;
using CutShop.Benchmarks.Solids;
using CutShop.Benchmarks.Stores;
using CutShop.Benchmarks.Takeoff;
using CutShop.Benchmarks.Trust;

// One subcommand a subject; each measures, prints a table and says whether its targets are met (exit code 1 where not).
(string Name, string About, Func<string[], int> Run)[] subjects =
[
    ("takeoff", "The takeoff of a job against the bare JSON parse of its file, from 10 to 100,000 posts.", _ => TakeoffBenchmark.Run()),
    ("solid", "A post as a solid: what one that is like none before costs, and its figures against random points counted in its bodies.", SolidBenchmark.Run),
    ("desk", "Lists, searches and a job's page against a bare endpoint, with 1,000 and 100,000 jobs; the live preview against its takeoff.", _ => DeskBenchmark.Run()),
    ("benches", "Claim and complete at the cut bench against the same transactions written raw.", _ => BenchesBenchmark.Run()),
    ("stores", "The same work on the file and on a database server.", _ => StoresBenchmark.Run()),
    ("large-jobs", "What a post costs when jobs of 1,000 to 16,000 posts are taken in and cancelled, on the file and on a database server.", _ => LargeJobsBenchmark.Run()),
    ("labels", "How many photographed labels are read at each level of correction.", LabelsBenchmark.Run),
    ("site", "What an installer's pages and a site pack weigh and cost.", _ => SiteBenchmark.Run()),
];

switch (args)
{
    case ["all", .. var rest]:
        return AllCommand.Run(subjects, rest);
    case ["against", .. var rest]:
        return AgainstCommand.Run(rest);
    case ["cutting", .. var rest]:
        return CuttingCommand.Run(rest);
    case ["trust", .. var rest]:
        return TrustCommand.Run(rest);
    case [var name, .. var rest] when subjects.Any(subject => subject.Name == name):
        return subjects.Single(subject => subject.Name == name).Run(rest);
    default:
        Console.Error.WriteLine(
            $"usage: all [--write FILE], or one of {string.Join(", ", subjects.Select(subject => subject.Name))}, cutting, trust, against; " +
            "cutting takes [--seconds N] [--direct N] [--only TEXT] [--write FILE]; trust takes names of its figures, and [--kills N] [--lengths N] [--files N] [--seconds N] [--store postgresql] [--write FILE]; labels takes [--pictures N]; solid takes [--posts N]; " +
            $"against takes COMMIT [MEASURE…] [--turns N], where a MEASURE is one of {AgainstCommand.Names}");
        return 2;
}
