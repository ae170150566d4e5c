using Ramwright.Records.Store;

namespace Ramwright.App.Web.Pages;

/// <summary>What every act needs: the ledger, the models on the shelf, the clock.</summary>
public sealed record Bench(Ledger Ledger, ShopModels Models, TimeProvider Clock)
{
    /// <summary>Today where the shop is.</summary>
    public DateOnly Today => DateOnly.FromDateTime(Clock.GetLocalNow().DateTime);
}
