using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Studio.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class QuoteSheet : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "Form",
                table: "Quote",
                type: "text",
                nullable: false,
                defaultValue: "");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "Form",
                table: "Quote");
        }
    }
}
