using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace Studio.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class AnyMould : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "Parts",
                table: "Piece",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Sheets",
                table: "Piece",
                type: "text",
                nullable: false,
                defaultValue: "[]");

            migrationBuilder.AddColumn<string>(
                name: "Checks",
                table: "Mould",
                type: "text",
                nullable: false,
                defaultValue: "[]");

            migrationBuilder.AddColumn<string>(
                name: "Mesh",
                table: "Mould",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Readings",
                table: "Mould",
                type: "text",
                nullable: false,
                defaultValue: "[]");

            migrationBuilder.AddColumn<double>(
                name: "VolumeFactor",
                table: "Mould",
                type: "double precision",
                nullable: false,
                defaultValue: 1.0);

            migrationBuilder.AddColumn<double>(
                name: "VolumeSpreadPercent",
                table: "Mould",
                type: "double precision",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "Tip",
                columns: table => new
                {
                    Id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Place = table.Column<string>(type: "text", nullable: false),
                    Text = table.Column<string>(type: "text", nullable: false),
                    Source = table.Column<string>(type: "text", nullable: false),
                    Seed = table.Column<string>(type: "text", nullable: false),
                    Retired = table.Column<bool>(type: "boolean", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Tip", x => x.Id);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Tip_Place",
                table: "Tip",
                column: "Place");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "Tip");

            migrationBuilder.DropColumn(
                name: "Parts",
                table: "Piece");

            migrationBuilder.DropColumn(
                name: "Sheets",
                table: "Piece");

            migrationBuilder.DropColumn(
                name: "Checks",
                table: "Mould");

            migrationBuilder.DropColumn(
                name: "Mesh",
                table: "Mould");

            migrationBuilder.DropColumn(
                name: "Readings",
                table: "Mould");

            migrationBuilder.DropColumn(
                name: "VolumeFactor",
                table: "Mould");

            migrationBuilder.DropColumn(
                name: "VolumeSpreadPercent",
                table: "Mould");
        }
    }
}
