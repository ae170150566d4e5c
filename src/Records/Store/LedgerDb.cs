using Microsoft.EntityFrameworkCore;

namespace Ramwright.Records.Store;

/// <summary>The tables, the same in every database. What a provider needs of its own stands in its folder.</summary>
internal abstract class LedgerDb(DbContextOptions options) : DbContext(options)
{
    public DbSet<EntryRow> Entries => Set<EntryRow>();

    public DbSet<JobRow> Jobs => Set<JobRow>();

    public DbSet<ToolRow> Tools => Set<ToolRow>();

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<EntryRow>(entry =>
        {
            entry.ToTable("Entries");
            entry.HasKey(e => e.Number);
            entry.Property(e => e.Number).ValueGeneratedNever();
            entry.HasIndex(e => new { e.Stream, e.Number });
            entry.HasIndex(e => new { e.Token, e.Place }).IsUnique();
        });
        modelBuilder.Entity<JobRow>(job =>
        {
            job.ToTable("Jobs");
            job.HasKey(j => j.Id);
            job.HasIndex(j => j.Number);
            job.HasIndex(j => j.Tool);
            job.HasIndex(j => j.End);
        });
        modelBuilder.Entity<ToolRow>(tool =>
        {
            tool.ToTable("Tools");
            tool.HasKey(t => t.Serial);
        });
    }
}
