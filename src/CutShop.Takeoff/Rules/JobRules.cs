using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.Rules;

/// <summary>The takeoff of a job, <c>JobTakeoff.Of(job, tables)</c>: every rule of the trade, put together.</summary>
public static class JobRules
{
    extension(JobTakeoff)
    {
        /// <summary>Works out what a job needs. The same job and tables always give the same takeoff.</summary>
        /// <param name="job">The job.</param>
        /// <param name="tables">Rope weights, screws and bits.</param>
        /// <param name="rules">The number of the rules: today's, or <see cref="TakeoffRules.First"/>.</param>
        public static JobTakeoff Of(Job job, ShopTables tables, int rules = TakeoffRules.Number)
        {
            ArgumentNullException.ThrowIfNull(job);
            ArgumentNullException.ThrowIfNull(tables);
            var isFirst = rules == TakeoffRules.First;
            return isFirst ? Of(FirstRules.Of(job), FirstRules.Of(tables), isFirst) with { Job = job } : Of(job, tables, isFirst);
        }

        private static JobTakeoff Of(Job job, ShopTables tables, bool isFirst)
        {
            var (pieces, bores, fixings, warnings) = (new List<Piece>(), new List<Bore>(), new List<Fixing>(), new List<Warning>());
            for (var i = 0; i < job.Lines.Count; i++)
            {
                var line = job.Lines[i];
                var works = new List<RowWork>();
                foreach (var row in line.Rows)
                {
                    var work = new RowTakeoff(job, line, row, tables, isFirst).Work();
                    works.Add(work);
                    pieces.AddRange(work.Pieces);
                    bores.AddRange(work.Bores);
                    fixings.AddRange(work.Fixings);
                }
                warnings.AddRange(LineWarnings.Of(job, i, works, warnings.Count, tables, isFirst));
            }
            return new JobTakeoff(job, pieces, bores, fixings, isFirst ? [.. FirstRules.Of(warnings)] : warnings);
        }
    }
}
