using Ramwright.Records.Events;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Records.Tests.Demo;

/// <summary>The jobs in the house, one at each station at least, and two that have ended. All invented.</summary>
internal static class SaltmarshJobs
{
    public static void Tell(Telling t)
    {
        if (t.Models.TryGetValue("corrie-85", out var corrie))
            Corries(t, corrie);
        if (t.Models.TryGetValue("skerry-52", out var skerry))
            Skerries(t, skerry);
        if (t.Models.TryGetValue("corrie-120", out var large))
            new Story(t, "corrie-120 due", large, t.At(1, 14, 5)).Open("C120-0093", SaltmarshHouse.Wrackford, "due", "complete, hose kinked near the head", 9, SaltmarshHouse.Lot);
    }

    private static void Corries(Telling t, ServiceModel model)
    {
        new Story(t, "released", model, t.At(11, 8, 5))
            .Open("C85-20417", SaltmarshHouse.Eelmarsh, "weak, drips at the front", "dirty, complete, pack missing its latch", -4)
            .Safe().Goes(Station.Find)
            .Signed(SaltmarshHouse.Technician, new FindingRecorded(new SymptomId("pressure-decays"), null, Seen: true), new FindingRecorded(new SymptomId("oil-at-rod"), null, Seen: true), new FindingRecorded(new SymptomId("rattles"), null, Seen: false))
            .Goes(Station.Plan).Planned("pressure falls at rest and oil stands at the rod: ram seals", "seal-ram", "backup-ram")
            .Goes(Station.Price).Quoted().Later(90).Answered(true, "Mr Reed", "by telephone")
            .On(10, 8, 0).Goes(Station.Strip).Stripped()
            .Goes(Station.Rebuild).RebuildBegun().Rebuilt()
            .On(9, 8, 30).Goes(Station.Set).Set(0.94)
            .Goes(Station.Prove).Prove(model.Limits.ProofRuns, seed: 417)
            .Goes(Station.Release).Ends(JobEnd.Released, "series 1 conforms");

        new Story(t, "at prove", model, t.At(6, 9, 0))
            .Open("C85-20533", SaltmarshHouse.Samphire, "stops early", "clean, complete", 1)
            .Safe().Goes(Station.Find).Signed(SaltmarshHouse.SecondTechnician, new FindingRecorded(new SymptomId("stops-low"), null, Seen: true))
            .Goes(Station.Set).Set(0.91)
            .On(0, 7, 30).Goes(Station.Prove).Prove(5, seed: 533);

        new Story(t, "at set", model, t.At(5, 8, 20))
            .Open("C85-19888", SaltmarshHouse.Eelmarsh, "opens too soon since it fell", "scratched, jaw guard bent", 2)
            .Safe().Goes(Station.Find).Signed(SaltmarshHouse.Technician, new FindingRecorded(new SymptomId("stops-low"), null, Seen: true), new FindingRecorded(null, "relief cap sealed with paint, not by us", Seen: true))
            .On(1, 15, 10).Goes(Station.Set).Set(0.93, locked: false);

        new Story(t, "at rebuild", model, t.At(5, 10, 0))
            .Open("C85-20102", SaltmarshHouse.Samphire, "oil on the hands after every shift", "oily, complete", 3)
            .Safe().Goes(Station.Find).Signed(SaltmarshHouse.Technician, new FindingRecorded(new SymptomId("oil-at-belly"), null, Seen: true))
            .Goes(Station.Plan).Planned("oil under the reservoir: bladder and fill plug", "bladder", "seal-fill-plug")
            .Goes(Station.Price).Quoted().Later(200).Answered(true, "Ms Dunlin")
            .On(1, 8, 15).Goes(Station.Strip).Stripped()
            .Goes(Station.Rebuild).RebuildBegun().Rebuilt(0.3);

        new Story(t, "at strip", model, t.At(4, 11, 0))
            .Open("C85-18776", SaltmarshHouse.Eelmarsh, "ram does not come home", "complete, jaw open and stuck", 4)
            .Safe().Goes(Station.Find).Signed(SaltmarshHouse.Technician, new FindingRecorded(new SymptomId("no-return"), null, Seen: true), new FindingRecorded(new SymptomId("jerky"), null, Seen: true))
            .Goes(Station.Plan).Planned("the ram stays out: springs and bush", "return-spring-outer", "rod-bush")
            .Goes(Station.Price).Quoted().Later(60).Answered(true, "Mr Reed")
            .On(0, 7, 5).Goes(Station.Strip).Stripped(0.4);

        new Story(t, "at plan", model, t.At(2, 9, 30))
            .Open("C85-20618", SaltmarshHouse.Samphire, "slow and hot", "dusty, complete", 5)
            .Safe().Goes(Station.Find).Signed(SaltmarshHouse.SecondTechnician, new FindingRecorded(new SymptomId("slow"), null, Seen: true), new FindingRecorded(new SymptomId("hot-motor"), null, Seen: true))
            .Goes(Station.Plan);

        new Story(t, "lot one", model, t.At(1, 14, 0)).Open("C85-20901", SaltmarshHouse.Wrackford, "due", "complete", 9, SaltmarshHouse.Lot);
        new Story(t, "lot two", model, t.At(1, 14, 3)).Open("C85-20902", SaltmarshHouse.Wrackford, "due", "complete, label unreadable", 9, SaltmarshHouse.Lot).Safe().Goes(Station.Find);
    }

    private static void Skerries(Telling t, ServiceModel model)
    {
        new Story(t, "returned", model, t.At(10, 9, 0))
            .Open("S52-0771", SaltmarshHouse.Wrackford, "cuts badly", "old, blades chipped", -2)
            .Safe().Goes(Station.Find).Signed(SaltmarshHouse.Technician, new FindingRecorded(new SymptomId("torn-cut"), null, Seen: true), new FindingRecorded(new SymptomId("oil-at-rod"), null, Seen: true))
            .Goes(Station.Plan).Planned("oil at the rod; blades chipped", "gland-ring", "blades")
            .Goes(Station.Price).Quoted().On(8, 10).Answered(false, "Ms Carr", "a new one is nearly as cheap")
            .Ends(JobEnd.ReturnedUnrepaired, "quote declined");

        new Story(t, "at price", model, t.At(3, 13, 0))
            .Open("S52-0840", SaltmarshHouse.Eelmarsh, "drips", "clean, complete", 6)
            .Safe().Goes(Station.Find).Signed(SaltmarshHouse.SecondTechnician, new FindingRecorded(new SymptomId("oil-at-rod"), null, Seen: true))
            .Goes(Station.Plan).Planned("oil at the rod: gland and ram rings", "gland-ring", "lip-ring")
            .Goes(Station.Price).Quoted();

        new Story(t, "at arrive", model, t.At(0, 6, 50)).Open("S52-0912", SaltmarshHouse.Samphire, "nothing happens on the trigger", "complete, pack dead", 7);
    }
}
