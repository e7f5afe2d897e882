using CutShop.Takeoff;
var r = JobFileReader.Read(File.ReadAllBytes(args[1]));
foreach (var p in r.Problems) Console.Error.WriteLine(p);
if (r.Job is null) return 2;
using var o = Console.OpenStandardOutput();
TakeoffJson.Write(JobTakeoff.Of(r.Job, ShopTables.Standard), o);
return 0;
